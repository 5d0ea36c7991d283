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

/** The angles of the raised cosine at each of the values, where the lag is a whole one. */
const ANGLES = Float64Array.from({ length: TAPS }, (_, k) => (2 * Math.PI * (k + 1 - TAPS / 2)) / TAPS);
const COSINES = ANGLES.map(Math.cos);
const SINES = ANGLES.map(Math.sin);

/**
 * The curve at one lag, in samples; it must lie so far from both ends that all its neighbours exist. The sines of all
 * distances are one but for their signs, and the raised cosine turns by a fixed angle from one to the next.
 */
export const valueAt = (curve: Float64Array, lag: number): number => {
  const whole = Math.floor(lag);
  const part = lag - whole;
  const near = Math.min(part, 1 - part);
  if (near < 1e-9) return curve[Math.round(lag)] ?? 0;
  const sine = Math.sin(Math.PI * near) / Math.PI;
  const cosineOfPart = Math.cos((2 * Math.PI * part) / TAPS);
  const sineOfPart = Math.sin((2 * Math.PI * part) / TAPS);
  const first = whole + 1 - TAPS / 2;
  let sum = 0;
  for (let k = 0; k < TAPS; k += 1) {
    const sinc = (k % 2 === 0 ? sine : -sine) / (k + 1 - TAPS / 2 - part);
    const raised = 0.5 + 0.5 * ((COSINES[k] ?? 0) * cosineOfPart + (SINES[k] ?? 0) * sineOfPart);
    sum += sinc * raised * (curve[Math.abs(first + k)] ?? 0);
  }
  return sum;
};
