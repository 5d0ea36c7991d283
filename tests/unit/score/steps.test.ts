import { describe, expect, it } from 'vitest';
import { METERS } from '../../../src/core/chart/build-chart';
import { createGrid } from '../../../src/core/score/grid';
import { fitSteps, hitSteps, readSteps, ticksOf } from '../../../src/core/score/steps';

describe('patterns', () => {
  const marks = (text: string, beats: number, kind: 'time' | 'hand' | 'line' | 'bass') =>
    fitSteps(readSteps(text)[0] ?? [], beats, kind)
      .map(({ beat, mark }) => `${beat}${mark}`)
      .join(' ');

  it.each([
    ['a b c d', 4, 'line', '0a 1b 2c 3d'],
    ['a b c d', 3, 'line', '0a 1b 2d'],
    ['a b c d', 3, 'time', '0a 1b 2b'],
    ['a b c d', 3, 'hand', '0a 1b 2c'],
    ['a b c d', 3, 'bass', '0a 1b 2d'],
    ['a b c d', 2, 'bass', '0a 1c'],
    ['a b c d', 2, 'line', '0a 1d'],
    ['a b c d', 2, 'time', '0a 1b'],
    ['a b c d', 6, 'time', '0a 1b 2c 3d 4a 5b'],
  ] as const)('%s fitted to %s beats (%s) is %s', (text, beats, kind, fitted) => {
    expect(marks(text, beats, kind)).toBe(fitted);
  });

  it('know their bars and divisions', () => {
    const [first, second] = readSteps('x.o x | R');
    expect(first?.map(({ step, of, mark }) => `${step}/${of}${mark}`)).toEqual([
      '0/3x',
      '1/3.',
      '2/3o',
      '0/1x',
    ]);
    expect(second).toEqual([{ beat: 0, step: 0, of: 1, mark: 'R' }]);
    expect(() => readSteps('x | ')).toThrow('A pattern needs marks in every bar');
  });

  it('of hits keep to the beats of the bar', () => {
    const grid = createGrid(METERS['3/4'], 2);
    expect(hitSteps('x. .x .. .h', 3).map((step) => ticksOf(grid, step))).toEqual([0, 800]);
  });
});
