import { describe, expect, it } from 'vitest';
import { feelOf } from '../../../src/core/feels/feels';
import { rideSwing, swingRatio } from '../../../src/core/score/swing';
import { testStyle } from '../../helpers/test-charts';

describe('swing', () => {
  it.each([
    ['shuffle', 'feel', 60, 2],
    ['shuffle', 'feel', 200, 2],
    ['shuffle', 'by tempo', 200, 2],
    ['shuffle', 'by tempo', 240, 1.5],
    ['shuffle', 1.3, 108, 1.3],
    ['swing', 'feel', 150, 3],
    ['swing', 'feel', 100, 3.5],
    ['swing', 2, 150, 2],
    ['swing', 5, 150, 3.5],
    ['swing', 0.2, 150, 1],
    ['straight', 'feel', 120, 1],
    ['slow-12-8', 1, 60, 2],
  ] as const)('%s asked for %s at %s bpm swings %s : 1', (feel, swing, tempo, ratio) => {
    expect(swingRatio(feelOf(feel), testStyle(feel, { swing }), tempo)).toBeCloseTo(ratio, 9);
  });

  it('refuses a tempo that is not above zero', () => {
    expect(() => rideSwing(0)).toThrow('Tempo must be above 0, got 0');
  });
});
