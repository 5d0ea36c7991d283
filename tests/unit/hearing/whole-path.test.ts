import { describe, expect, it } from 'vitest';
import { createPitchPath } from '../../../src/core/hearing/pitch-path';
import { createWholePath } from '../../../src/core/hearing/whole-path';

const COSTS = { moves: [0, 0.5], leap: 1, start: 1.5, stop: 1 } as const;

/** Evidence of three pitches, step by step; no pitch has 0. */
type Row = readonly (readonly [number, number, number])[];
const NOTHING = [-1, -1, -1] as const;
const times = (count: number, step: readonly [number, number, number]): Row =>
  Array.from({ length: count }, () => step);

const live = (row: Row): readonly number[] => {
  const path = createPitchPath(3, COSTS);
  return row.map((step) => path.step(Float64Array.from(step), 0));
};
const whole = (row: Row): readonly number[] => {
  const { path, decide } = createWholePath(3, COSTS);
  for (const step of row) path.step(Float64Array.from(step), 0);
  return decide();
};

describe('a path that knows what comes later', () => {
  it('begins a pitch where it began, not where it had become sure', () => {
    const row = [...times(5, NOTHING), ...times(12, [-1, 0.5, -1]), ...times(5, NOTHING)];
    const expected = [...Array(5).fill(-1), ...Array(12).fill(1), ...Array(5).fill(-1)];
    expect(live(row).slice(5, 9)).toEqual([-1, -1, -1, -1]);
    expect(whole(row)).toEqual(expected);
  });

  it('leaves out what is heard for a moment only, and is taken by those who do not know what follows', () => {
    const row = [...times(10, [1, -1, -1]), ...times(1, [-1, -1, 0.4]), ...times(10, [1, -1, -1])];
    expect(live(row)[10]).toBe(2);
    expect(whole(row)).toEqual(Array(21).fill(0));
  });

  it('says as the other does where every step is plain', () => {
    const row = [...times(4, [5, -1, -1]), ...times(4, [-1, -1, 5]), ...times(4, [-9, -9, -9])];
    expect(whole(row)).toEqual(live(row));
    expect(whole(row)).toEqual([0, 0, 0, 0, 2, 2, 2, 2, -1, -1, -1, -1]);
  });

  it('decides a place for each of very many steps, and none without any', () => {
    const row = [...times(1300, [1, -1, -1]), ...times(1300, [-1, -1, 1])];
    expect(whole(row)).toEqual([...Array(1300).fill(0), ...Array(1300).fill(2)]);
    expect(whole([])).toEqual([]);
  });
});
