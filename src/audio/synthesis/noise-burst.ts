/** Bursts of band-limited noise: fingers, felts, picks, breath. */
import type { Random } from '../../core/theory/random';

/** Edges of a band in Hz: one pole below, two poles above. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

/** Noise that rises at once and dies away. */
export interface NoiseBurst extends Band {
  /** RMS amplitude the burst would have without its envelope. */
  readonly level: number;
  /** Time constant of the rise, s. */
  readonly rise: number;
  /** dB per second. */
  readonly decay: number;
}

/** A burst ends this far below its start. */
const INAUDIBLE_DB = 60;

/** Smoothing factor of a one-pole low-pass with its corner at `frequency`. */
const onePole = (frequency: number, sampleRate: number): number =>
  1 - Math.exp((-2 * Math.PI * Math.min(frequency, 0.45 * sampleRate)) / sampleRate);

/** White noise through one high-pass and two low-pass poles, scaled to unit RMS. */
export const bandNoise = (random: Random, size: number, band: Band, sampleRate: number): Float64Array => {
  const out = new Float64Array(size);
  const a = onePole(band.high, sampleRate);
  const b = onePole(band.low, sampleRate);
  let first = 0;
  let second = 0;
  let slow = 0;
  let energy = 0;
  for (let i = 0; i < size; i++) {
    first += a * (random() - 0.5 - first);
    second += a * (first - second);
    slow += b * (second - slow);
    const value = second - slow;
    out[i] = value;
    energy += value * value;
  }
  const scale = energy > 0 ? Math.sqrt(size / energy) : 0;
  for (let i = 0; i < size; i++) out[i] = (out[i] ?? 0) * scale;
  return out;
};

/** What a burst is added to. */
export interface BurstRoom {
  readonly out: Float64Array;
  readonly sampleRate: number;
  /** Samples there would be, of which `out` has the first: the burst is the same whatever is left out. */
  readonly whole?: number;
}

/** Adds a burst to `out` from its first sample on, until it cannot be heard any more. */
export const addNoiseBurst = (
  { out, sampleRate, whole = out.length }: BurstRoom,
  burst: NoiseBurst,
  random: Random,
): void => {
  if (burst.level <= 0) return;
  const seconds = burst.decay > 0 ? INAUDIBLE_DB / burst.decay : whole / sampleRate;
  const size = Math.min(whole, Math.ceil(seconds * sampleRate));
  const noise = bandNoise(random, size, burst, sampleRate);
  const fall = 10 ** (-burst.decay / 20 / sampleRate);
  const settle = Math.exp(-1 / (burst.rise * sampleRate));
  let loud = burst.level;
  let silent = 1;
  for (let i = 0; i < Math.min(size, out.length); i++) {
    out[i] = (out[i] ?? 0) + loud * (1 - silent) * (noise[i] ?? 0);
    loud *= fall;
    silent *= settle;
  }
};
