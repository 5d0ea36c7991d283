import type { PitchRange } from './reachable';

/** A local maximum of a likeness curve, between whole lags. */
export interface Peak {
  /** Samples. */
  readonly lag: number;
  /** Likeness there, at most 1. */
  readonly height: number;
}

/** The maximum of the parabola through three neighbours, or undefined where the middle one is no maximum. */
export const peakAt = (curve: Float64Array, lag: number): Peak | undefined => {
  const before = curve[lag - 1];
  const here = curve[lag];
  const after = curve[lag + 1];
  if (!(here >= before && here > after)) return undefined;
  const bend = before - 2 * here + after;
  const shift = bend < 0 ? (before - after) / (2 * bend) : 0;
  return { lag: lag + shift, height: Math.min(1, here - ((before - after) * shift) / 4) };
};

/** The highest peak within `reach` samples of a lag. */
export const peakNear = (curve: Float64Array, lag: number, reach: number): Peak | undefined => {
  let best: Peak | undefined;
  const last = Math.min(curve.length - 2, Math.ceil(lag + reach));
  for (let at = Math.max(1, Math.floor(lag - reach)); at <= last; at += 1) {
    const peak = peakAt(curve, at);
    if (peak === undefined || Math.abs(peak.lag - lag) > reach) continue;
    if (best === undefined || peak.height > best.height) best = peak;
  }
  return best;
};

/** True for lags whose pitch can sound. */
export const createLagTest = (ranges: readonly PitchRange[], rate: number) => (lag: number) => {
  const frequency = rate / lag;
  return ranges.some(({ from, to }) => frequency >= from && frequency <= to);
};

/** Every peak that a test allows, shortest lag first. */
export const allowedPeaks = (
  curve: Float64Array,
  allowed: (lag: number) => boolean,
  shortest: number,
): readonly Peak[] => {
  const peaks: Peak[] = [];
  for (let lag = Math.max(1, shortest); lag < curve.length - 1; lag += 1) {
    const peak = peakAt(curve, lag);
    if (peak !== undefined && allowed(peak.lag)) peaks.push(peak);
  }
  return peaks;
};

/** The first peak at least `share` as high as the highest: multiples of the period are as like, and come later. */
export const firstHighPeak = (peaks: readonly Peak[], share: number): Peak | undefined => {
  const highest = Math.max(...peaks.map(({ height }) => height));
  return peaks.find(({ height }) => height > 0 && height >= share * highest);
};
