import { describe, expect, it } from 'vitest';
import { combProgress } from '../../../src/core/log/comb-progress';
import type { BendProgress, BendWeek } from '../../../src/core/log/progress';

const week = (number: number, tries: number, hits: number, mean: number | null): BendWeek => ({
  week: number,
  tries,
  hits,
  measured: mean === null ? 0 : tries,
  cents: mean === null ? null : { mean, spread: 5 },
});

const bend = (sound: string, ...weeks: readonly BendWeek[]): BendProgress => ({
  sound,
  harp: 'C harp',
  harpKind: 'C',
  tries: weeks.reduce((sum, { tries }) => sum + tries, 0),
  hits: weeks.reduce((sum, { hits }) => sum + hits, 0),
  weeks,
});

describe('bends on the comb', () => {
  it('stand on the side of their breath, bends and overbends further out than natural notes', () => {
    const places = combProgress(
      ["3D'''", "3D'", "8B'", '10OD', '6OB', "10B''"].map((sound) => bend(sound, week(1, 1, 1, null))),
    );
    expect(places.map(({ sound, hole, row }) => [sound, hole, row])).toEqual([
      ["3D'", 3, -2],
      ["3D'''", 3, -4],
      ['6OB', 6, 2],
      ["8B'", 8, 2],
      ["10B''", 10, 3],
      ['10OD', 10, -2],
    ]);
  });

  it('are counted over the last four weeks in which any was tried, and over all before', () => {
    const [first, second] = combProgress([
      bend("2D'", week(90, 10, 1, -40), week(97, 4, 1, 10), week(100, 8, 6, -20)),
      bend("4D'", week(96, 5, 5, null)),
    ]);
    // (4 × 10 − 8 × 20) / 12 = −10 cents, by hand.
    expect(first?.lately).toEqual({ tries: 12, hits: 7, cents: -10 });
    expect(first?.before).toEqual({ tries: 10, hits: 1, cents: -40 });
    expect(second?.lately).toEqual({ tries: 0, hits: 0, cents: null });
    expect(second?.before).toEqual({ tries: 5, hits: 5, cents: null });
  });

  it('leave out what is no sound of a harp, as a damaged file may have', () => {
    expect(combProgress([bend('what', week(1, 1, 1, null))])).toEqual([]);
  });
});
