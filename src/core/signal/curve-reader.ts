/** Reads a curve that has one value a whole lag at lags between. */
export interface CurveReader {
  /** Fills `values` with the curve at each lag. Below lag 0 a curve goes on as above it. */
  read(curve: Float64Array, values: Float64Array): void;
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
  const places = new Int32Array(lags.length * TAPS);
  const weights = new Float64Array(lags.length * TAPS);
  for (const [i, lag] of lags.entries()) {
    const first = Math.floor(lag) - TAPS / 2 + 1;
    for (let k = 0; k < TAPS; k += 1) {
      places[i * TAPS + k] = Math.abs(first + k);
      weights[i * TAPS + k] = weightAt(first + k - lag);
    }
  }
  return {
    read(curve, values) {
      for (let i = 0, w = 0; i < values.length; i += 1, w += TAPS) {
        let sum = 0;
        for (let k = w; k < w + TAPS; k += 1) sum += (weights[k] ?? 0) * (curve[places[k] ?? 0] ?? 0);
        values[i] = sum;
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
