/** Loops that hold whole periods of everything in them, so that the end meets the start without a seam. */
import type { Random } from '../../core/theory/random';
import { type Band, bandNoise } from './noise-burst';

/** A loop that holds whole periods in whole samples. */
export interface LoopLength {
  /** Whole samples. */
  readonly samples: number;
  /** Whole periods of the fundamental in those samples. */
  readonly periods: number;
  /** Fundamental that fits the loop exactly; within 0.01 cent of the one asked for when the loop lasts seconds. */
  readonly fundamental: number;
}

/** The loop of about `seconds` that holds whole periods of `fundamental` (Hz). */
export const loopLength = (seconds: number, fundamental: number, sampleRate: number): LoopLength => {
  const periods = Math.max(1, Math.round(seconds * fundamental));
  const samples = Math.round((periods * sampleRate) / fundamental);
  return { samples, periods, fundamental: (periods * sampleRate) / samples };
};

/** Band noise of unit RMS that repeats after `size` samples: the filters go round twice and keep the second turn. */
export const loopNoise = (random: Random, size: number, band: Band, sampleRate: number): Float64Array => {
  const turn = new Float64Array(size);
  for (let i = 0; i < size; i++) turn[i] = random();
  let at = 0;
  const around: Random = () => {
    const value = turn[at] ?? 0;
    at = at + 1 === size ? 0 : at + 1;
    return value;
  };
  const twice = bandNoise(around, 2 * size, band, sampleRate);
  return twice.subarray(size);
};

/** Samples to compute beyond the end of a loop, for players that interpolate across it. */
export const LOOP_GUARD = 64;

/** Adds a loop's noise to all of `out`, round and round, rising with time constant `rise` (samples) until `from`. */
export const addLoopNoise = (
  out: Float64Array,
  noise: Float64Array,
  level: number,
  onset: { readonly rise: number; readonly from: number },
): void => {
  const settle = Math.exp(-1 / onset.rise);
  let silent = 1;
  let at = 0;
  for (let i = 0; i < out.length; i++) {
    if (i === onset.from) silent = 0;
    out[i] = (out[i] ?? 0) + level * (1 - silent) * (noise[at] ?? 0);
    silent *= settle;
    at = at + 1 === noise.length ? 0 : at + 1;
  }
};
