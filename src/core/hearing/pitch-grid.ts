import { elementAt } from '../theory/element-at';
import type { PitchRange } from './reachable';

/** The pitches a tracker chooses from, finely spaced, lowest first. */
export interface PitchGrid {
  /** Hz. */
  readonly frequencies: Float64Array;
  /** Place of the pitch a whole number of times as high as each, −1 where the grid has none. */
  timesHigher(times: number): Int32Array;
}

/** Cents between neighbours: fine enough that the nearest point of a rich sound is still near its peak. */
const SPACING = 20;

const hzOfStep = (step: number): number => 2 ** ((step * SPACING) / 1200);
const stepOfHz = (hz: number): number => (1200 * Math.log2(hz)) / SPACING;

/** Lays the grid over ranges of pitch. */
export const createPitchGrid = (ranges: readonly PitchRange[]): PitchGrid => {
  const covered = ranges.flatMap(({ from, to }) => {
    const first = Math.floor(stepOfHz(from));
    return Array.from({ length: Math.ceil(stepOfHz(to)) - first + 1 }, (_, i) => first + i);
  });
  const steps = [...new Set(covered)].sort((a, b) => a - b);
  const places = new Map(steps.map((step, place) => [step, place]));
  return {
    frequencies: Float64Array.from(steps, hzOfStep),
    timesHigher(times) {
      const up = Math.round(stepOfHz(times));
      return Int32Array.from(steps, (step) => places.get(step + up) ?? -1);
    },
  };
};

/** The multiples of a pitch that are looked at. */
const TIMES = [2, 3, 4, 5, 6, 7] as const;
/** How many there are. */
export const MULTIPLES = TIMES.length;

/**
 * Places of the pitches two to seven times as high as each, six in a row, lowest first; where the grid has none the
 * place after its last.
 */
export const higherPlaces = (grid: PitchGrid): Int32Array => {
  const times = TIMES.map((each) => grid.timesHigher(each));
  const none = grid.frequencies.length;
  return Int32Array.from({ length: times.length * none }, (_, i) => {
    const place = elementAt(times, i % times.length)[Math.floor(i / times.length)] ?? -1;
    return place < 0 ? none : place;
  });
};

/** Fills with the highest of each value and those beside it, and with nothing after the last. */
export const widen = (values: Float64Array, wide: Float64Array): void => {
  const last = values.length - 1;
  let before = Number.NEGATIVE_INFINITY;
  let here = values[0] ?? 0;
  for (let i = 0; i <= last; i += 1) {
    const after = i < last ? (values[i + 1] ?? 0) : Number.NEGATIVE_INFINITY;
    wide[i] = Math.max(here, before, after);
    before = here;
    here = after;
  }
  wide[last + 1] = Number.NEGATIVE_INFINITY;
};
