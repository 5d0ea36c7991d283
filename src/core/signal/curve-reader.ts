/** Reads a curve that has one value a whole lag at lags between. */
export interface CurveReader {
  /** Fills `values`, from an index on, with the curve at each lag. Below lag 0 a curve goes on as above it. */
  read(curve: Float64Array, values: Float64Array, from?: number): void;
}

/** Values of the curve that go into one between them. */
const TAPS = 8;
/** Values a curve must have beyond the longest lag that is read. */
export const READING_MARGIN = TAPS / 2;

/** Weight of a value at a distance in samples: sinc under a raised cosine (band-limited interpolation). */
const weightAt = (distance: number): number => {
  if (Math.abs(distance) < 1e-9) return 1;
  const x = Math.PI * distance;
  return (Math.sin(x) / x) * (0.5 + 0.5 * Math.cos((2 * x) / TAPS));
};

/** A reader for fixed lags, in samples. */
export const createCurveReader = (lags: Float64Array): CurveReader => {
  const firsts = Int32Array.from(lags, (lag) => Math.floor(lag) - TAPS / 2 + 1);
  const weights = new Float64Array(lags.length * TAPS);
  for (let i = 0; i < weights.length; i += 1) {
    const place = Math.floor(i / TAPS);
    weights[i] = weightAt((firsts[place] ?? 0) + (i % TAPS) - (lags[place] ?? 0));
  }
  const mirrored = new Float64Array(TAPS);
  return {
    read(curve, values, from = 0) {
      let w = 0;
      for (let i = 0; i < firsts.length; i += 1) {
        const first = firsts[i] ?? 0;
        let near = curve;
        let at = first;
        if (first < 0) {
          for (let k = 0; k < TAPS; k += 1) mirrored[k] = curve[Math.abs(first + k)] ?? 0;
          near = mirrored;
          at = 0;
        }
        // Written out, since it is what an ear does most.
        values[from + i] =
          (weights[w] ?? 0) * (near[at] ?? 0) +
          (weights[w + 1] ?? 0) * (near[at + 1] ?? 0) +
          (weights[w + 2] ?? 0) * (near[at + 2] ?? 0) +
          (weights[w + 3] ?? 0) * (near[at + 3] ?? 0) +
          (weights[w + 4] ?? 0) * (near[at + 4] ?? 0) +
          (weights[w + 5] ?? 0) * (near[at + 5] ?? 0) +
          (weights[w + 6] ?? 0) * (near[at + 6] ?? 0) +
          (weights[w + 7] ?? 0) * (near[at + 7] ?? 0);
        w += TAPS;
      }
    },
  };
};

/** The curve at one lag, in samples; it must lie so far from both ends that all its neighbours exist. */
export const valueAt = (curve: Float64Array, lag: number): number => {
  const first = Math.floor(lag) - TAPS / 2 + 1;
  let sum = 0;
  for (let k = 0; k < TAPS; k += 1) sum += weightAt(first + k - lag) * (curve[Math.abs(first + k)] ?? 0);
  return sum;
};
