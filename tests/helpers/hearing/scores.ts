/**
 * How well notes and pitches were heard, as the field measures it: notes after the transcription measures of the
 * mir_eval library (github.com/mir-evaluation/mir_eval, transcription.py at commit fe73b353; C. Raffel et al., ISMIR
 * 2014), onsets after its onset.py, frames after its melody.py. Times in seconds, pitches in Hz.
 */
import { largestMatching } from './matching';

export interface ScoredNote {
  readonly from: number;
  readonly to: number;
  readonly hz: number;
}

export interface Score {
  readonly precision: number;
  readonly recall: number;
  readonly f: number;
  /** Pairs of indices: reference, estimate. */
  readonly pairs: readonly (readonly [number, number])[];
}

export interface NoteTolerance {
  /** Seconds between onsets; null leaves onsets out. */
  readonly onset?: number | null;
  /** Cents; null leaves the pitch out. */
  readonly pitch?: number | null;
  /** Share of the reference's length that ends may lie apart, at least 50 ms; null leaves ends out. */
  readonly offset?: number | null;
  /** Distances must be less than, not at most, the tolerance. */
  readonly strict?: boolean;
}

const DECIMALS = 1e4;
const rounded = (value: number): number => Math.round(value * DECIMALS) / DECIMALS;

const scoreOf = (pairs: Score['pairs'], references: number, estimates: number): Score => {
  const precision = estimates === 0 ? 0 : pairs.length / estimates;
  const recall = references === 0 ? 0 : pairs.length / references;
  const f = pairs.length === 0 ? 0 : (2 * precision * recall) / (precision + recall);
  return { precision, recall, f, pairs };
};

/** Notes found: onset within ±50 ms and pitch within ±50 cents, one to one, unless told otherwise. */
export const noteScore = (
  references: readonly ScoredNote[],
  estimates: readonly ScoredNote[],
  { onset = 0.05, pitch = 50, offset = null, strict = false }: NoteTolerance = {},
): Score => {
  const within = (distance: number, tolerance: number): boolean =>
    strict ? rounded(distance) < tolerance : rounded(distance) <= tolerance;
  const match = (one: ScoredNote, other: ScoredNote): boolean =>
    (onset === null || within(Math.abs(one.from - other.from), onset)) &&
    (pitch === null || within(Math.abs(1200 * Math.log2(one.hz / other.hz)), pitch)) &&
    (offset === null || within(Math.abs(one.to - other.to), Math.max(offset * (one.to - one.from), 0.05)));
  const partners = references.map((reference) =>
    estimates.flatMap((estimate, j) => (match(reference, estimate) ? [j] : [])),
  );
  return scoreOf(largestMatching(partners), references.length, estimates.length);
};

/** Mean over pairs of the time both notes share to the time they span together; 0 without pairs. */
export const overlapRatio = (
  references: readonly ScoredNote[],
  estimates: readonly ScoredNote[],
  pairs: Score['pairs'],
): number => {
  const ratios = pairs.map(([i, j]) => {
    const [one, other] = [references[i], estimates[j]];
    return (
      (Math.min(one.to, other.to) - Math.max(one.from, other.from)) /
      (Math.max(one.to, other.to) - Math.min(one.from, other.from))
    );
  });
  return ratios.length === 0 ? 0 : ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
};

/** Onsets found within a window (seconds to either side), one to one. */
export const onsetScore = (
  references: readonly number[],
  estimates: readonly number[],
  window = 0.05,
): Score => {
  const partners = references.map((reference) =>
    estimates.flatMap((estimate, j) => (rounded(Math.abs(estimate - reference)) <= window ? [j] : [])),
  );
  return scoreOf(largestMatching(partners), references.length, estimates.length);
};

/** Cents above 10 Hz; 0 stands for no pitch. */
export const centsOf = (hz: number): number => (hz === 0 ? 0 : 1200 * Math.log2(Math.abs(hz) / 10));

export interface FrameScore {
  /** Share of the voiced reference frames called voiced. */
  readonly voicingRecall: number;
  /** Share of the unvoiced reference frames called voiced. */
  readonly falseAlarm: number;
  /** Share of voiced reference frames within the tolerance, whether called voiced or not. */
  readonly pitch: number;
  /** The same with octaves left out. */
  readonly chroma: number;
  /** Share of all frames right in voicing, and in pitch where voiced. */
  readonly overall: number;
}

/**
 * Frames at the same times. `voicing` 0–1 says how surely an estimate is voiced; where absent, a frequency above 0 is
 * voiced. Right is less than `tolerance` cents away.
 */
export const frameScore = (
  reference: ArrayLike<number>,
  estimate: ArrayLike<number>,
  { tolerance = 50, voicing }: { readonly tolerance?: number; readonly voicing?: ArrayLike<number> } = {},
): FrameScore => {
  const count = { voiced: 0, unvoiced: 0, recall: 0, alarm: 0, pitch: 0, chroma: 0, overall: 0 };
  for (let i = 0; i < reference.length; i += 1) {
    const sure = voicing?.[i] ?? (estimate[i] > 0 ? 1 : 0);
    if (reference[i] === 0) {
      count.unvoiced += 1;
      count.alarm += sure;
      count.overall += 1 - sure;
      continue;
    }
    count.voiced += 1;
    count.recall += sure;
    if (estimate[i] === 0) continue;
    const off = centsOf(estimate[i]) - centsOf(reference[i]);
    if (Math.abs(off) < tolerance) {
      count.pitch += 1;
      count.overall += sure;
    }
    if (Math.abs(off - 1200 * Math.floor(off / 1200 + 0.5)) < tolerance) count.chroma += 1;
  }
  const share = (part: number, whole: number): number => (whole === 0 ? 0 : part / whole);
  return {
    voicingRecall: share(count.recall, count.voiced),
    falseAlarm: share(count.alarm, count.unvoiced),
    pitch: share(count.pitch, count.voiced),
    chroma: share(count.chroma, count.voiced),
    overall: share(count.overall, reference.length),
  };
};

/**
 * Cents at other times: between two voiced readings they are interpolated, from or to an unvoiced one (0) the earlier
 * is held. `times` rises, as do `wanted`.
 */
export const resampleCents = (
  times: readonly number[],
  cents: readonly number[],
  wanted: readonly number[],
): readonly number[] =>
  wanted.map((time) => {
    const after = times.findIndex((each) => each > time + 1e-9);
    const i = after < 0 ? times.length - 1 : after - 1;
    if (i < 0) return 0;
    const [here, next] = [cents[i], cents[i + 1]];
    if (next === undefined || here === 0 || next === 0) return here;
    return here + ((next - here) * (time - times[i])) / (times[i + 1] - times[i]);
  });
