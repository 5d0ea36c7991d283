import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MarkedSound } from '../../../src/core/fit/mark-sounds';
import { soundId } from '../../../src/core/harp/tab';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { keysLayout, READABLE } from '../../../src/ui/controls/keys-layout';
import { acrossOf, combPlaces } from '../../../src/ui/controls/map-layout';
import { type Box, routeOf, type SoundBox } from '../../../src/ui/controls/path-route';
import { anyMarks, marksOf } from '../../helpers/marked-harps';

/** A comb's cells, the gap between them and the height of the letters in all drawings, in px. */
const SIZE = { width: 60, height: 26, gap: 6, letter: 14 } as const;

/** The boxes a grid gives the places of a comb; the hole numbers are a row of their own. */
const combBoxes = (marks: readonly MarkedSound[], mirrored: boolean): readonly SoundBox[] => {
  const places = combPlaces(marks);
  const holes = Math.max(...places.map(({ hole }) => hole));
  const above = Math.max(...places.map(({ row }) => row));
  const { width, height, gap } = SIZE;
  const half = gap / 2;
  return places.map(({ mark, hole, row }) => {
    const left = acrossOf(hole, holes, mirrored) * (width + gap);
    const top = (above - row) * (height + gap);
    const [right, bottom] = [left + width, top + height];
    const cell = { left: left - half, right: right + half, top: top - half, bottom: bottom + half };
    return { id: soundId(mark.sound), left, right, top, bottom, cell };
  });
};

/** The boxes of the Keys drawing: rows without gaps, blow sounds at the left of their hole and draw sounds at the right. */
const keysBoxes = (marks: readonly MarkedSound[], wanted: number, mirrored: boolean): readonly SoundBox[] => {
  const layout = keysLayout(marks, wanted, mirrored);
  return marks.map(({ sound }) => {
    const left = layout.columnOf(sound.hole, sound.pitch) * READABLE.hole;
    const top = layout.rowOf(sound.pitch) * READABLE.row;
    const cell: Box = { left, right: left + READABLE.hole, top, bottom: top + READABLE.row };
    const [from, to] = sound.breath === 'blow' ? [2, 18] : [9, 25];
    const inner = { left: left + from, right: left + to, top: top + 1, bottom: cell.bottom - 1 };
    return { id: soundId(sound), cell, ...inner };
  });
};

type Point = readonly [x: number, y: number];
type Stretch = readonly [Point, Point];

/** The straight stretches of path data made of M, H and V. */
const stretchesOf = (path: string): readonly Stretch[] => {
  const stretches: Stretch[] = [];
  let at: Point = [0, 0];
  for (const [, letter, numbers = ''] of path.matchAll(/([MHV])([^MHV]+)/g)) {
    const [a = 0, b = 0] = numbers.trim().split(' ').map(Number);
    const to: Point = letter === 'M' ? [a, b] : letter === 'H' ? [a, at[1]] : [at[0], a];
    if (letter !== 'M') stretches.push([at, to]);
    at = to;
  }
  return stretches;
};

/** Letters stand in the middle of their box, as high as they are set. */
const crosses = ([[x1, y1], [x2, y2]]: Stretch, { left, right, top, bottom }: Box): boolean => {
  const middle = (top + bottom) / 2;
  const half = SIZE.letter / 2;
  return (
    Math.max(x1, x2) > left + 1 &&
    Math.min(x1, x2) < right - 1 &&
    Math.max(y1, y2) > middle - half &&
    Math.min(y1, y2) < middle + half
  );
};

const checkWay = (boxes: readonly SoundBox[], picks: readonly number[]): void => {
  const way = picks.flatMap((pick) => boxes[pick % boxes.length] ?? []);
  const stretches = stretchesOf(routeOf(way));
  const leaps = way.filter(({ id }, i) => i > 0 && id !== way[i - 1]?.id).length;
  expect(stretches).toHaveLength(leaps * 3);
  for (const stretch of stretches) {
    expect(boxes.filter((box) => crosses(stretch, box)).map(({ id }) => id)).toEqual([]);
  }
};

describe('the way of a line', () => {
  const picks = fc.array(fc.nat(1000), { minLength: 2, maxLength: 8 });

  it('runs through no letters of the comb', () => {
    fc.assert(
      fc.property(anyMarks, picks, fc.boolean(), (marks, way, mirrored) =>
        checkWay(combBoxes(marks, mirrored), way),
      ),
      { numRuns: 200 },
    );
  });

  it('runs through no letters of the Keys drawing', () => {
    const parts = fc.integer({ min: 1, max: 4 });
    fc.assert(
      fc.property(anyMarks, picks, fc.boolean(), parts, (marks, way, mirrored, wanted) =>
        checkWay(keysBoxes(marks, wanted, mirrored), way),
      ),
      { numRuns: 200 },
    );
  });

  it('does not run at all between one place and itself', () => {
    const [box] = combBoxes(marksOf(TUNINGS[0]), false);
    if (box === undefined) throw new Error('A harp has sounds');
    expect(routeOf([box, box])).toBe('');
  });
});
