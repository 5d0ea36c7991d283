/** Decay times from backward-integrated energy, and small readings of arrays. */

/** Level of an amplitude. */
export const decibels = (amplitude: number): number => 20 * Math.log10(Math.max(amplitude, 1e-12));
/** Largest size in a list. */
export const largest = (values: ArrayLike<number>): number => {
  let most = 0;
  for (let i = 0; i < values.length; i += 1) most = Math.max(most, Math.abs(values[i] ?? 0));
  return most;
};
/** Index of the largest value. */
export const indexOfLargest = (values: Float64Array): number => {
  let best = 0;
  for (let i = 1; i < values.length; i += 1) if ((values[i] ?? 0) > (values[best] ?? 0)) best = i;
  return best;
};

const slopePerSecond = (values: Float64Array, from: number, to: number, hop: number): number => {
  const middle = (from + to) / 2;
  let covariance = 0;
  let variance = 0;
  for (let i = from; i <= to; i += 1) {
    covariance += (i - middle) * (values[i] ?? 0);
    variance += (i - middle) ** 2;
  }
  return covariance / variance / hop;
};

/** T60 in ms of a line through the backward integral of `energy` between −`upper` and −`lower` dB. */
export const decayTime = (energy: Float64Array, hop: number, upper: number, lower: number): number | null => {
  const integral = energy.slice(indexOfLargest(energy));
  for (let i = integral.length - 2; i >= 0; i -= 1) integral[i] = (integral[i] ?? 0) + (integral[i + 1] ?? 0);
  const total = integral[0] ?? 0;
  if (!(total > 0)) return null;
  const levels = integral.map((value) => 10 * Math.log10(Math.max(value / total, 1e-12)));
  let from = levels.findIndex((level) => level <= -upper);
  let to = levels.findIndex((level) => level <= -lower);
  if (from < 0 || to < 0) return null;
  if (to - from < 2) {
    from = Math.max(0, from - 1);
    to = Math.min(levels.length - 1, to + 1);
  }
  if (to - from < 2) return null;
  const slope = slopePerSecond(levels, from, to, hop);
  return slope < 0 ? -60000 / slope : null;
};
