/** Loops that hold whole periods of everything in them, so that the end meets the start without a seam. */
import type { Random } from '../../core/theory/random';
import { type Band, bandNoise } from './noise-burst';

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
  const turn = Float64Array.from({ length: size }, random);
  let at = 0;
  const around: Random = () => {
    const value = turn[at % size] ?? 0;
    at += 1;
    return value;
  };
  const twice = bandNoise(around, 2 * size, band, sampleRate);
  return twice.subarray(size);
};

/** Samples to compute beyond the end of a loop, for players that interpolate across it. */
export const LOOP_GUARD = 64;
