import type { MeterName } from '../chart/chart';
import { isCompound } from './grid';
import type { PartId } from './score';

/** Ways to swing other than a ratio: the feel's own, each part by its tempo, all by the hard ride. */
export const SWING_WAYS = ['feel', 'by tempo', 'hard ride'] as const;

/** A way to swing, or a long : short ratio within `SWING_RANGE` for everybody. */
export type SwingChoice = (typeof SWING_WAYS)[number] | number;

/** Smallest and largest long : short ratio; the ride was measured from 1:1 to 3.5:1 (TMH-QPSR 4/1997). */
export const SWING_RANGE = { low: 1, high: 3.5 } as const;

const clampSwing = (ratio: number): number => Math.min(SWING_RANGE.high, Math.max(SWING_RANGE.low, ratio));

const checkTempo = (tempo: number): void => {
  if (!(tempo > 0)) throw new RangeError(`Tempo must be above 0, got ${tempo}`);
};

/**
 * The hard ride's long : short ratio at a tempo in quarter notes a minute: the short note keeps about 100 ms, so
 * r = 600 / tempo − 1, kept within 1…3.5 (after doi 10.1525/mp.2002.19.3.333, few recordings). Throws RangeError
 * unless tempo > 0.
 */
export const rideSwing = (tempo: number): number => {
  checkTempo(tempo);
  return clampSwing(600 / tempo - 1);
};

/**
 * Log2 of long : short against tempo as regressed over some 400,000 pairs of eighths of jazz trios, with the tempo
 * measured in standard deviations from its mean (Jazz Trio Database, doi 10.5334/tismir.186 and 10.1098/rsos.240920,
 * notebook "beat-upbeat-ratios"). Chords and lead have what its pianists have, who comp and solo.
 */
const TRIO = {
  mean: 195,
  deviation: 47.9,
  drums: { at: 0.909, falls: 0.241 },
  bass: { at: 0.895, falls: 0.203 },
  piano: { at: 0.466, falls: 0.14 },
} as const;

/** The slowest and fastest tempo the regression is used for: about two deviations from its mean. */
const TRIO_TEMPO = { low: 100, high: 300 } as const;

/**
 * Long : short of an off-beat pair as trios play it, by who plays and tempo in quarter notes a minute: the drums
 * 2.4 : 1 at 120, a pianist 1.6 : 1. Throws RangeError unless tempo > 0.
 *
 * @example
 * Math.round(trioSwing('drums', 120) * 10) // 24
 */
export const trioSwing = (part: PartId, tempo: number): number => {
  checkTempo(tempo);
  const { at, falls } = part === 'drums' || part === 'bass' ? TRIO[part] : TRIO.piano;
  const inside = Math.min(TRIO_TEMPO.high, Math.max(TRIO_TEMPO.low, tempo));
  return clampSwing(2 ** (at - falls * ((inside - TRIO.mean) / TRIO.deviation)));
};

/** What a feel says about swing. */
interface Swung {
  /** `null` keeps the chart's own meter. */
  readonly meter: MeterName | null;
  readonly swing: number | 'by tempo';
}

/** Where swing is asked for: the player's choice, the tempo in beats a minute, and who plays. */
interface Swinging {
  readonly swing: SwingChoice;
  readonly tempo: number;
  readonly part: PartId;
}

/**
 * Long : short of an off-beat pair as a part plays the feel. Compound feels keep 2:1, because the meter itself divides
 * the beat in three.
 */
export const swingRatio = (feel: Swung, { swing, tempo, part }: Swinging): number => {
  if (feel.meter !== null && isCompound(feel.meter)) return 2;
  const wanted = swing === 'feel' ? feel.swing : swing;
  if (wanted === 'hard ride') return rideSwing(tempo);
  return wanted === 'by tempo' ? trioSwing(part, tempo) : clampSwing(wanted);
};
