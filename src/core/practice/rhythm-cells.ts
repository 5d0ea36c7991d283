import type { MeterName } from '../chart/chart';

/** Durations of a bar in eighths; negative ones are rests. */
export type RhythmCell = readonly number[];

interface MeterCells {
  /** Bars that go on. */
  readonly opening: readonly RhythmCell[];
  /** Last bars of a call: they stop early, so that the answer has air to come in. */
  readonly closing: readonly RhythmCell[];
}

const FOUR: MeterCells = {
  opening: [
    [2, 1, 1, 4],
    [3, 1, 2, 2],
    [-1, 1, 1, 1, 2, 2],
    [2, 2, 2, 2],
    [4, 2, 2],
    [1, 1, 2, 1, 1, 2],
    [-2, 2, 1, 1, 2],
    [3, 3, 2],
  ],
  closing: [
    [4, -4],
    [2, 2, -4],
    [1, 1, 2, -4],
    [6, -2],
    [1, 3, -4],
    [3, 1, -4],
    [2, 1, 1, -4],
  ],
};

const THREE: MeterCells = {
  opening: [
    [2, 2, 2],
    [2, 1, 1, 2],
    [3, 1, 2],
    [4, 2],
    [-2, 2, 1, 1],
  ],
  closing: [
    [2, -4],
    [4, -2],
    [1, 1, 2, -2],
    [2, 2, -2],
  ],
};

const TWELVE: MeterCells = {
  opening: [
    [3, 3, 6],
    [2, 1, 2, 1, 3, 3],
    [3, 2, 1, 6],
    [6, 2, 1, 3],
    [1, 1, 1, 3, 2, 1, 3],
    [-3, 3, 2, 1, 3],
  ],
  closing: [
    [6, -6],
    [3, 3, -6],
    [2, 1, 3, -6],
    [9, -3],
    [1, 1, 1, 3, -6],
  ],
};

const SIX: MeterCells = {
  opening: [
    [3, 3],
    [2, 1, 3],
    [1, 1, 1, 3],
    [2, 1, 2, 1],
  ],
  closing: [
    [3, -3],
    [2, 1, -3],
    [1, 1, 1, -3],
  ],
};

/** Rhythms of short calls, by meter (common practice, no source). */
export const RHYTHM_CELLS: Readonly<Record<MeterName, MeterCells>> = {
  '4/4': FOUR,
  '3/4': THREE,
  '12/8': TWELVE,
  '6/8': SIX,
};

/** One unit of a cell. */
export const EIGHTH_TICKS = 240;
