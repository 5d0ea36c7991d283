import { elementAt } from '../theory/element-at';
import type { LevelReading } from './reed-meter';

/** Seconds before its first voiced frame in which a note may begin, and after it in which it reaches its level. */
const SEARCH = { back: 0.08, still: 0.012, ahead: 0.06 } as const;
/** What a reed that is sounded rises at least, dB: the tail of a room does not. */
const RISE = 6;
/** Enough of a rise whatever was before: other notes may have sounded at these frequencies. dB. */
const PLAIN_RISE = 14;
/** The note begins where it is so far below the top of its attack, dB. */
const DEPTH = 20;
/** A note is at most so much softer than the same reed just before. dB. */
const SOFTER = 12;
/** Seconds by which half a window makes the rise look late. */
const WINDOW_LAG = 0.004;

const lowestBetween = (past: readonly LevelReading[], from: number, to: number): number => {
  let low = past.findIndex(({ time }) => time > from);
  if (low < 0) return low;
  past.forEach(({ time, level }, i) => {
    if (i > low && time <= to && level <= elementAt(past, low).level) low = i;
  });
  return low;
};

const highestAfter = (past: readonly LevelReading[], from: number, until: number): number => {
  let top = from;
  past.forEach(({ time, level }, i) => {
    if (i > from && time < until && level > elementAt(past, top).level) top = i;
  });
  return top;
};

/**
 * When a reed was attacked, from its levels over the last moments and the time it was first heard at; null when its
 * level did not rise there, or only as the tail of a room wavers.
 */
export const attackTime = (past: readonly LevelReading[], first: number): number | null => {
  const low = lowestBetween(past, first - SEARCH.back, first + SEARCH.still);
  if (low < 0) return null;
  const top = highestAfter(past, low, first + SEARCH.ahead);
  const [least, most] = [elementAt(past, low).level, elementAt(past, top).level];
  const before = Math.max(...past.slice(0, low + 1).map(({ level }) => level));
  const rise = most - least;
  if (rise < RISE || (rise < PLAIN_RISE && before - most > SOFTER)) return null;
  const floor = Math.max(least + RISE, most - DEPTH);
  let begun = top;
  while (begun > low && elementAt(past, begun).level > floor) begun -= 1;
  return Math.min(first, elementAt(past, begun).time - WINDOW_LAG);
};
