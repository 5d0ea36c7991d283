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
