import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MarkedSound } from '../../../src/core/fit/mark-sounds';
import { soundId } from '../../../src/core/harp/tab';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { keysLayout, partsFor, READABLE } from '../../../src/ui/controls/keys-layout';
import { combPlaces } from '../../../src/ui/controls/map-layout';
import { anyMarks, marksOf } from '../../helpers/marked-harps';
import { soakRuns } from '../../helpers/soak';

const checkComb = (marks: readonly MarkedSound[]): void => {
  const places = combPlaces(marks);
  expect(places.map(({ mark }) => soundId(mark.sound)).sort()).toEqual(
    marks.map(({ sound }) => soundId(sound)).sort(),
  );
  expect(new Set(places.map(({ hole, row }) => `${hole}/${row}`)).size).toBe(places.length);
  for (const { mark, hole, row } of places) {
    expect(hole).toBe(mark.sound.hole);
    expect(row > 0 ? 'blow' : 'draw').toBe(mark.sound.breath);
    if (mark.sound.technique === 'natural') expect(Math.abs(row)).toBe(1);
  }
};

describe('the comb', () => {
  it.each(TUNINGS.map((tuning) => [tuning.name, tuning] as const))(
    'gives every sound one cell, blown above and drawn below: %s',
    (_, tuning) => {
      checkComb(marksOf(tuning));
      checkComb(marksOf(tuning, [1, 2, 3, 4, 5, 6, 7, 8, 9, 10]));
    },
  );

  it('does so on retuned and valved harps of up to fourteen holes', () => {
    fc.assert(fc.property(anyMarks, checkComb), { numRuns: soakRuns(300) });
  });

  // Holes 1-6 bend on the draw and overblow, 7-10 bend on the blow and overdraw: the rule by which the higher reed
  // of a hole bends, J. Acoust. Soc. Am. 103(4), 1998, doi 10.1121/1.421359, on the notes of OEIS A291810.
  it('of the standard harp needs three rows above the holes and four below', () => {
    const places = combPlaces(marksOf(TUNINGS[0]));
    const side = (hole: number, breath: string) =>
      places
        .filter(({ mark }) => mark.sound.hole === hole && mark.sound.breath === breath)
        .map(({ mark }) => soundId(mark.sound));
    expect(side(1, 'blow')).toEqual(['1B', '1OB']);
    expect(side(3, 'draw')).toEqual(['3D', "3D'", "3D''", "3D'''"]);
    expect(side(7, 'draw')).toEqual(['7D', '7OD']);
    expect(side(10, 'blow')).toEqual(['10B', "10B'", "10B''"]);
    expect(Math.max(...places.map(({ row }) => row))).toBe(3);
    expect(Math.min(...places.map(({ row }) => row))).toBe(-4);
  });
});

describe('the Keys drawing', () => {
  const parts = fc.integer({ min: 1, max: 4 });

  it('gives every sound one cell, at the height of its pitch, in the column of its hole', () => {
    fc.assert(
      fc.property(anyMarks, parts, fc.boolean(), (marks, wanted, mirrored) => {
        const layout = keysLayout(marks, wanted, mirrored);
        const cells = marks.map(({ sound: { hole, pitch, breath } }) => {
          const part = layout.parts.filter((each) => each.pitches.includes(pitch));
          expect(part).toHaveLength(1);
          const column = layout.columnOf(hole, pitch);
          expect(part[0]?.holes).toContainEqual({ hole, column });
          expect(layout.rowOf(pitch)).toBeGreaterThanOrEqual(1);
          expect(layout.rowOf(pitch)).toBeLessThanOrEqual(layout.rows);
          expect(layout.rowOf(part[0]?.pitches.at(-1) ?? 0)).toBe(layout.rows);
          return `${column}/${layout.rowOf(pitch)}/${breath}`;
        });
        const distinct = new Set(marks.map(({ sound: s }) => `${s.hole}/${s.pitch}/${s.breath}`));
        expect(new Set(cells).size).toBe(distinct.size);
      }),
      { numRuns: soakRuns(300) },
    );
  });

  it('has no two sounds of one breath on one key of a hole, valved or not', () => {
    fc.assert(
      fc.property(anyMarks, (marks) => {
        const distinct = new Set(marks.map(({ sound: s }) => `${s.hole}/${s.pitch}/${s.breath}`));
        expect(distinct.size).toBe(marks.length);
      }),
      { numRuns: soakRuns(300) },
    );
  });

  it('has every note at one height in every octave where the piano is laid in octaves', () => {
    const layout = keysLayout(marksOf(TUNINGS[0]), 3, false);
    expect(layout.parts.map(({ pitches }) => pitches.length)).toEqual([12, 12, 14]);
    expect([60, 72, 84].map(layout.rowOf)).toEqual([14, 14, 14]);
  });

  it('is laid in as few parts as show all of it in readable rows, and scrolls where none do', () => {
    const marks = marksOf(TUNINGS[0]);
    expect(partsFor(marks, { width: 500, height: 38 * READABLE.row + READABLE.holes })).toBe(1);
    expect(partsFor(marks, { width: 840, height: 400 })).toBe(2);
    expect(partsFor(marks, { width: 840, height: 300 })).toBe(3);
    expect(partsFor(marks, { width: 360, height: 300 })).toBe(1);
    expect(partsFor(marks, { width: 0, height: 0 })).toBe(1);
  });
});
