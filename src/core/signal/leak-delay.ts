import { createRealFft } from './real-fft';

/** Finds how long a sound that was sent out takes to come back. */
export interface LeakDelay {
  /** Takes a hop of what was sent and of what is heard; returns the delay in samples when it was looked at anew. */
  step(sent: Float64Array, heard: Float64Array): number | undefined;
}

/** Samples of a block; half of it is the longest delay found. */
const SIZE = 16384;
/** What remains of older blocks at each new one. */
const MEMORY = 0.85;
/** How far the highest peak must stand out of the spread of the curve to be believed. */
const CLEAR = 9;
const NOTHING = 1e-12;

/**
 * Generalised cross-correlation with a phase transform (C. Knapp and G. Carter, IEEE Trans. ASSP 24, 1976) over blocks
 * that overlap by half; the earliest strong peak is the direct sound.
 */
export const createLeakDelay = (hop: number): LeakDelay => {
  const fft = createRealFft(SIZE);
  const sentPast = new Float64Array(SIZE);
  const heardLate = new Float64Array(SIZE);
  const cross = new Float64Array(SIZE + 2);
  const a = new Float64Array(SIZE + 2);
  const b = new Float64Array(SIZE + 2);
  const time = new Float64Array(SIZE);
  let fresh = 0;

  const look = (): number | undefined => {
    // The latest half of the heard against all that was sent: no delay up to half a block wraps around.
    fft.toSpectrum(sentPast, a);
    fft.toSpectrum(heardLate, b);
    for (let k = 0; k <= SIZE; k += 2) {
      const sentRe = a[k] ?? 0;
      const sentIm = a[k + 1] ?? 0;
      const re = b[k] ?? 0;
      const im = b[k + 1] ?? 0;
      const real = MEMORY * (cross[k] ?? 0) + sentRe * re + sentIm * im;
      const imaginary = MEMORY * (cross[k + 1] ?? 0) + sentRe * im - sentIm * re;
      const root = Math.sqrt(Math.sqrt(real * real + imaginary * imaginary + NOTHING));
      const weight = 1 / (root * Math.sqrt(root) * Math.sqrt(Math.sqrt(root)));
      cross[k] = real;
      cross[k + 1] = imaginary;
      a[k] = real * weight;
      a[k + 1] = imaginary * weight;
    }
    fft.toTime(a, time);
    let best = 0;
    let power = 0;
    for (let i = 0; i < SIZE / 2; i += 1) {
      const value = time[i] ?? 0;
      power += value * value;
      if (Math.abs(value) > Math.abs(time[best] ?? 0)) best = i;
    }
    const spread = Math.sqrt(power / (SIZE / 2)) + NOTHING;
    return Math.abs(time[best] ?? 0) > CLEAR * spread ? best : undefined;
  };

  return {
    step(sent, heard) {
      sentPast.set(sent, SIZE / 2 + fresh);
      heardLate.set(heard, SIZE / 2 + fresh);
      fresh += hop;
      if (fresh < SIZE / 2) return undefined;
      const found = look();
      sentPast.copyWithin(0, SIZE / 2);
      fresh = 0;
      return found;
    },
  };
};
