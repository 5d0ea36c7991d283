import { describe, expect, it } from 'vitest';
import { feelOf } from '../../../src/core/feels/feels';
import {
  rideSwing,
  SWING_RANGE,
  type SwingChoice,
  swingRatio,
  trioSwing,
} from '../../../src/core/score/swing';

describe('swing', () => {
  it.each([
    ['shuffle', 'feel', 60, 2],
    ['shuffle', 'feel', 200, 2],
    ['shuffle', 'hard ride', 200, 2],
    ['shuffle', 'hard ride', 240, 1.5],
    ['shuffle', 1.3, 108, 1.3],
    ['swing', 'hard ride', 150, 3],
    ['swing', 'hard ride', 100, 3.5],
    ['swing', 2, 150, 2],
    ['swing', 5, 150, 3.5],
    ['swing', 0.2, 150, 1],
    ['straight', 'feel', 120, 1],
    ['slow-12-8', 1, 60, 2],
  ] as const)('%s asked for %s at %s bpm swings %s : 1', (feel, swing, tempo, ratio) => {
    expect(swingRatio(feelOf(feel), { swing, tempo, part: 'drums' })).toBeCloseTo(ratio, 9);
  });

  it('by tempo gives each part its own ratio, a hard ride one to all', () => {
    const ratios = (swing: SwingChoice) =>
      (['drums', 'bass', 'chords', 'lead'] as const).map((part) =>
        swingRatio(feelOf('swing'), { swing, tempo: 150, part }),
      );
    expect(ratios('feel')).toEqual(ratios('by tempo'));
    expect(new Set(ratios('by tempo')).size).toBe(3);
    expect(new Set(ratios('hard ride'))).toEqual(new Set([3]));
  });

  it('stays within its range at any tempo', () => {
    for (let tempo = 20; tempo <= 400; tempo += 5) {
      for (const part of ['drums', 'bass', 'chords'] as const) {
        expect(trioSwing(part, tempo)).toBeGreaterThanOrEqual(SWING_RANGE.low);
        expect(trioSwing(part, tempo)).toBeLessThanOrEqual(3);
        expect(trioSwing(part, tempo)).toBeLessThanOrEqual(trioSwing(part, tempo - 5));
      }
    }
  });

  it('refuses a tempo that is not above zero', () => {
    expect(() => rideSwing(0)).toThrow('Tempo must be above 0, got 0');
    expect(() => trioSwing('bass', -1)).toThrow('Tempo must be above 0, got -1');
  });
});
