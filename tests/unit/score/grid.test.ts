import { describe, expect, it } from 'vitest';
import { METERS } from '../../../src/core/chart/build-chart';
import { createGrid, stepTicks, swingOver, swungTicks } from '../../../src/core/score/grid';

describe('places in the beat', () => {
  it.each([
    ['4/4', 2, 1, 2, 320],
    ['4/4', 1, 1, 2, 240],
    ['4/4', 3, 1, 2, 360],
    ['4/4', 2, 1, 3, 160],
    ['4/4', 2, 2, 3, 320],
    ['4/4', 1, 2, 3, 320],
    ['4/4', 1.7, 2, 3, 302.2],
    ['4/4', 3, 2, 3, 360],
    ['4/4', 3, 1, 3, 180],
    ['4/4', 1.2, 2, 3, 320],
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

describe('straight ticks that swing', () => {
  it.each([
    ['4/4', 2, 240, 320],
    ['4/4', 1, 240, 240],
    ['4/4', 3, 120, 180],
    ['4/4', 3, 360, 420],
    ['4/4', 3, 160, 160],
    ['4/4', 2, 480 + 240, 480 + 320],
    ['3/4', 2, 240, 320],
    ['12/8', 2, 240, 240],
  ] as const)('in %s at %s : 1, straight tick %s falls on %s', (meter, ratio, tick, expected) => {
    expect(swungTicks(createGrid(METERS[meter], ratio), tick)).toBeCloseTo(expected, 9);
  });

  it('lean by sixteenths where those swing', () => {
    const grid = createGrid(METERS['4/4'], 2, true);
    expect([120, 240, 360, 480].map((tick) => Math.round(swungTicks(grid, tick)))).toEqual([
      160, 240, 400, 480,
    ]);
  });

  it.each([1, 1.6, 2, 3.5])(
    'leaves a typed sextuplet as even as a pattern of six has it, at %f : 1',
    (ratio) => {
      const grid = createGrid(METERS['4/4'], ratio);
      const typed = [0, 1, 2, 3, 4, 5].map((step) => 480 + 80 * step);
      expect(typed.map(swingOver(grid, typed))).toEqual(
        [0, 1, 2, 3, 4, 5].map((step) => 480 + stepTicks(grid, step, 6)),
      );
    },
  );

  it('swings the beats beside a sextuplet', () => {
    const swung = swingOver(createGrid(METERS['4/4'], 2), [0, 240, 480, 560]);
    expect([0, 240, 720, 1200].map((at) => Math.round(swung(at)))).toEqual([0, 320, 720, 1280]);
  });
});
