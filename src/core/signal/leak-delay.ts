import FFT from 'fft.js';

/** Finds how long a sound that was sent out takes to come back. */
export interface LeakDelay {
  /** Takes a hop of what was sent and of what is heard; returns the delay in samples when it was looked at anew. */
  step(sent: Float64Array, heard: Float64Array): number | undefined;
}

/** Samples of a block; half of it is the longest delay found. */
const SIZE = 16384;
/** What remains of older blocks at each new one. */
const MEMORY = 0.85;
/** Whitening: 1 would give every frequency the same say, however little it was sent. */
const WHITENING = 0.8;
/** How far the highest peak must stand out of the spread of the curve to be believed. */
const CLEAR = 9;
const NOTHING = 1e-12;

/**
 * Generalised cross-correlation with a phase transform (C. Knapp and G. Carter, IEEE Trans. ASSP 24, 1976) over blocks
 * that overlap by half; the earliest strong peak is the direct sound.
 */
export const createLeakDelay = (hop: number): LeakDelay => {
  const fft = new FFT(SIZE);
  const sentPast = new Float64Array(SIZE);
  const heardLate = new Float64Array(SIZE);
  const cross = new Float64Array(SIZE + 2);
  const a = fft.createComplexArray();
  const b = fft.createComplexArray();
  const time = fft.createComplexArray();
  let fresh = 0;

  const look = (): number | undefined => {
    // The latest half of the heard against all that was sent: no delay up to half a block wraps around.
    fft.realTransform(a, sentPast);
    fft.realTransform(b, heardLate);
    for (let k = 0; k <= SIZE; k += 2) {
      cross[k] = MEMORY * (cross[k] ?? 0) + (a[k] ?? 0) * (b[k] ?? 0) + (a[k + 1] ?? 0) * (b[k + 1] ?? 0);
      cross[k + 1] =
        MEMORY * (cross[k + 1] ?? 0) + (a[k] ?? 0) * (b[k + 1] ?? 0) - (a[k + 1] ?? 0) * (b[k] ?? 0);
      const weight =
        ((cross[k] ?? 0) * (cross[k] ?? 0) + (cross[k + 1] ?? 0) * (cross[k + 1] ?? 0) + NOTHING) **
        (-WHITENING / 2);
      a[k] = (cross[k] ?? 0) * weight;
      a[k + 1] = (cross[k + 1] ?? 0) * weight;
    }
    fft.completeSpectrum(a);
    fft.inverseTransform(time, a);
    let best = 0;
    let power = 0;
    for (let i = 0; i < SIZE / 2; i += 1) {
      power += (time[2 * i] ?? 0) ** 2;
      if (Math.abs(time[2 * i] ?? 0) > Math.abs(time[2 * best] ?? 0)) best = i;
    }
    const spread = Math.sqrt(power / (SIZE / 2)) + NOTHING;
    return Math.abs(time[2 * best] ?? 0) > CLEAR * spread ? best : undefined;
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
