import { elementAt } from '../theory/element-at';
import { highMedian } from '../theory/statistics';

/** One reading of the pitch within a note. */
export interface Reading {
  /** Seconds. */
  readonly time: number;
  /** Hundredths of semitones on the scale of MIDI numbers: 6900 is 440 Hz. */
  readonly cents: number;
  /** dB re full scale. */
  readonly level: number;
}

/** A pitch stands where it stays within so many cents. */
const STANDS = 25;
/** Cents between neighbouring readings that no glide makes. */
const LEAP = 70;

/** The median of the last so many seconds of readings from an index on where they stand, in cents; null where they move. */
export const standing = (readings: readonly Reading[], from: number, seconds: number): number | null => {
  const last = readings.at(-1);
  if (last === undefined) return null;
  let [low, high] = [last.cents, last.cents];
  for (let i = readings.length - 1; i >= from; i -= 1) {
    const { time, cents } = elementAt(readings, i);
    low = Math.min(low, cents);
    high = Math.max(high, cents);
    if (high - low > STANDS) return null;
    if (last.time - time >= seconds) return highMedian(readings.slice(i).map((each) => each.cents));
  }
  return null;
};

/** Whether the level dips between two readings: its lowest lies so many dB below the highest on both sides. */
export const hasDip = (
  readings: readonly Reading[],
  [from, to]: readonly [number, number],
  depth: number,
): boolean => {
  let low = from;
  for (let i = from; i <= to; i += 1)
    if (elementAt(readings, i).level < elementAt(readings, low).level) low = i;
  const least = elementAt(readings, low).level + depth;
  const rises = (start: number, end: number): boolean =>
    readings.slice(start, end).some(({ level }) => level >= least);
  return rises(from, low) && rises(low, to + 1);
};

/** Index of the reading, not the first, from which on the pitch is more than half-way from one to another. */
export const crossing = (
  readings: readonly Reading[],
  [before, after]: readonly [number, number],
): number => {
  const half = (before + after) / 2;
  const last = readings.findLastIndex(({ cents }) => (after > before ? cents < half : cents > half));
  return Math.max(1, last + 1);
};

/** Whether the pitch came to a reading by a leap. */
export const leapt = (readings: readonly Reading[], i: number): boolean =>
  i > 0 && Math.abs(elementAt(readings, i).cents - elementAt(readings, i - 1).cents) > LEAP;
