import { describe, expect, it } from 'vitest';
import { METERS } from '../../../src/core/chart/build-chart';
import { FEELS } from '../../../src/core/feels/feels';
import { rideSwing, swingRatio } from '../../../src/core/feels/swing';
import { createGrid, stepTicks } from '../../../src/core/score/grid';
import { fitSteps, hitSteps, readSteps, ticksOf } from '../../../src/core/score/steps';
import { FEEL_IDS } from '../../helpers/program-arbitraries';
import { testStyle } from '../../helpers/test-charts';

describe('feels', () => {
  it('are twelve, each under its own id, with a start tempo inside its range', () => {
    expect(FEEL_IDS).toHaveLength(12);
    for (const id of FEEL_IDS) {
      const { tempo } = FEELS[id];
      expect(FEELS[id].id).toBe(id);
      expect(tempo.low < tempo.usual && tempo.usual < tempo.high).toBe(true);
      expect(tempo.low).toBeGreaterThanOrEqual(40);
      expect(tempo.high).toBeLessThanOrEqual(280);
    }
  });

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
    expect(swingRatio(FEELS[feel], testStyle(feel, { swing }), tempo)).toBeCloseTo(ratio, 9);
  });

  it('refuse a tempo that is not above zero', () => {
    expect(() => rideSwing(0)).toThrow('Tempo must be above 0, got 0');
  });
});

describe('places in the beat', () => {
  it.each([
    ['4/4', 2, 1, 2, 320],
    ['4/4', 1, 1, 2, 240],
    ['4/4', 3, 1, 2, 360],
    ['4/4', 2, 1, 3, 160],
    ['4/4', 2, 2, 3, 320],
    ['4/4', 1, 2, 3, 320],
    ['4/4', 1.7, 2, 3, 302.2],
    ['4/4', 3, 2, 3, 336],
    ['4/4', 3, 1, 3, 168],
    ['4/4', 1, 3, 4, 360],
    ['4/4', 2, 1, 4, 160],
    ['4/4', 2, 3, 4, 400],
    ['12/8', 1, 1, 2, 480],
    ['12/8', 2, 1, 3, 240],
    ['6/8', 3, 2, 3, 480],
  ] as const)('in %s at %s : 1, step %s of %s falls on tick %s', (meter, ratio, step, of, ticks) => {
    expect(stepTicks(createGrid(METERS[meter], ratio), step, of)).toBeCloseTo(ticks, 1);
  });

  it('swing in sixteenths leaves the eighths even', () => {
    const grid = createGrid(METERS['4/4'], 2, true);
    expect([0, 1, 2, 3].map((step) => Math.round(stepTicks(grid, step, 4)))).toEqual([0, 160, 240, 400]);
    expect(stepTicks(grid, 1, 2)).toBe(240);
  });

  it('refuses divisions and steps that do not exist', () => {
    const grid = createGrid(METERS['4/4'], 1);
    expect(() => stepTicks(grid, 1, 5)).toThrow('A beat divides by 1, 2, 3, 4 or 6, got 5');
    expect(() => stepTicks(grid, 2, 2)).toThrow('Step must be from 0 to 1, got 2');
  });
});

describe('patterns', () => {
  const marks = (text: string, beats: number, kind: 'time' | 'line') =>
    fitSteps(readSteps(text)[0] ?? [], beats, kind)
      .map(({ beat, mark }) => `${beat}${mark}`)
      .join(' ');

  it.each([
    ['a b c d', 4, 'line', '0a 1b 2c 3d'],
    ['a b c d', 3, 'line', '0a 1b 2d'],
    ['a b c d', 3, 'time', '0a 1c 2b'],
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
