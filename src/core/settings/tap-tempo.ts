import { asBpm, type Bpm, type EpochMs } from '../theory/units';
import { TEMPO_RANGE } from './parse-settings';

/** A pause longer than this starts a new count: the slowest tempo on offer, with some grace. */
const LONGEST_GAP_MS = (60_000 / TEMPO_RANGE.low) * 1.25;
/** Older taps say nothing about the tempo meant now. */
const TAPS_KEPT = 8;

/**
 * The taps that count, newest last, after one more.
 * @param taps earlier tap times, @param now the newest, all in milliseconds of one clock.
 */
export const addTap = (taps: readonly EpochMs[], now: EpochMs): readonly EpochMs[] => {
  const newest = taps.at(-1);
  if (newest === undefined || now - newest > LONGEST_GAP_MS || now < newest) return [now];
  return [...taps, now].slice(-TAPS_KEPT);
};

/** The tempo tapped, from the mean gap, held within the range on offer; `null` before the second tap. */
export const tappedTempo = (taps: readonly EpochMs[]): Bpm | null => {
  const first = taps[0];
  const last = taps.at(-1);
  if (first === undefined || last === undefined || last <= first) return null;
  const tempo = (60_000 * (taps.length - 1)) / (last - first);
  return asBpm(Math.min(TEMPO_RANGE.high, Math.max(TEMPO_RANGE.low, Math.round(tempo))));
};
