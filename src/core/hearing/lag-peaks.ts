import { READING_MARGIN, valueAt } from '../signal/curve-reader';

/** A local maximum of a likeness curve, between whole lags. */
export interface Peak {
  /** Samples. */
  readonly lag: number;
  /** Likeness there, at most 1. */
  readonly height: number;
}

/** The maximum of the parabola through three neighbours, or undefined where the middle one is no maximum. */
const peakAt = (curve: Float64Array, lag: number): Peak | undefined => {
  const before = curve[lag - 1] ?? Number.NaN;
  const here = curve[lag] ?? Number.NaN;
  const after = curve[lag + 1] ?? Number.NaN;
  if (!(here >= before && here > after)) return undefined;
  const shift = (before - after) / (2 * (before - 2 * here + after));
  return { lag: lag + shift, height: Math.min(1, here - ((before - after) * shift) / 4) };
};

/** The highest peak within `reach` samples of a lag. */
const peakNear = (curve: Float64Array, lag: number, reach: number): Peak | undefined => {
  let best: Peak | undefined;
  const last = Math.min(curve.length - 2, Math.ceil(lag + reach));
  for (let at = Math.max(1, Math.floor(lag - reach)); at <= last; at += 1) {
    const peak = peakAt(curve, at);
    if (peak === undefined || Math.abs(peak.lag - lag) > reach) continue;
    if (best === undefined || peak.height > best.height) best = peak;
  }
  return best;
};

/** Distance in samples of the values that a peak is read from a second time. */
const CLOSE = 0.25;

/** A parabola bends otherwise than a curve of few samples a period does; close to the top the two are alike. */
const closer = (curve: Float64Array, lag: number): number => {
  if (lag + READING_MARGIN + 1 >= curve.length) return lag;
  const before = valueAt(curve, lag - CLOSE);
  const here = valueAt(curve, lag);
  const after = valueAt(curve, lag + CLOSE);
  const bend = before - 2 * here + after;
  return bend < 0 ? lag + Math.max(-2, Math.min(2, (before - after) / (2 * bend))) * CLOSE : lag;
};

/** How far the true peak may lie from where a grid of pitches has it: half a semitone or a sample. */
const reachOf = (lag: number): number => Math.max(1, 0.03 * lag);
/** Share of the first peak's height that peaks at multiples must have to be believed. */
const STILL_HIGH = 0.75;

/**
 * The peak near a lag, made finer on its multiples: an error at the m-th counts only one m-th. Its height is that of
 * the first.
 */
export const finePeak = (curve: Float64Array, lag: number): Peak | undefined => {
  const first = peakNear(curve, lag, reachOf(lag));
  if (first === undefined) return undefined;
  let fine = first.lag;
  let times = 1;
  for (let m = 2; m * fine < curve.length - READING_MARGIN - 1; m += 1) {
    const next = peakNear(curve, m * fine, Math.max(1, 0.2 * lag));
    if (next === undefined || next.height < STILL_HIGH * first.height) break;
    fine = next.lag / m;
    times = m;
  }
  return { lag: closer(curve, times * fine) / times, height: first.height };
};
