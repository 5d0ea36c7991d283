import { asBpm, type Bpm, type EpochMs } from '../theory/units';
import { TEMPO_RANGE } from './tempo';

/** A pause longer than this starts a new count: the slowest tempo on offer, with some grace. */
const LONGEST_GAP_MS = (60_000 / TEMPO_RANGE.low) * 1.25;
/** Older taps say nothing about the tempo meant now. */
const TAPS_KEPT = 8;

/** A gap this far from the mean of those before it means another tempo, not an unsteady hand (ours, no source). */
const OTHER_TEMPO = 0.25;

/** The mean gap of taps, or null before the second. */
const meanGap = (taps: readonly EpochMs[]): number | null => {
  const first = taps[0];
  const last = taps.at(-1);
  return first === undefined || last === undefined || last <= first
    ? null
    : (last - first) / (taps.length - 1);
};

/**
 * The taps that count, newest last, after one more. A long pause starts a new count with this tap; a gap that
 * differs by more than a quarter from the mean so far starts one with this gap.
 * @param taps earlier tap times, @param now the newest, all in milliseconds of one clock.
 */
export const addTap = (taps: readonly EpochMs[], now: EpochMs): readonly EpochMs[] => {
  const newest = taps.at(-1);
  if (newest === undefined || now - newest > LONGEST_GAP_MS || now < newest) return [now];
  const mean = meanGap(taps);
  if (mean !== null && Math.abs(now - newest - mean) > OTHER_TEMPO * mean) return [newest, now];
  return [...taps, now].slice(-TAPS_KEPT);
};

/** The tempo tapped, from the mean gap, held within the range on offer; `null` before the second tap. */
export const tappedTempo = (taps: readonly EpochMs[]): Bpm | null => {
  const gap = meanGap(taps);
  if (gap === null) return null;
  return asBpm(Math.min(TEMPO_RANGE.high, Math.max(TEMPO_RANGE.low, Math.round(60_000 / gap))));
};
