import { elementAt } from '../theory/element-at';
import { highMedian } from '../theory/statistics';
import { STANDARD_PITCH } from '../theory/temperament';
import { asCents, asHz, asSeconds } from '../theory/units';
import type { HeardPitch, HeardVibrato, Movement } from './heard-note';
import type { Span } from './note-draft';
import type { Reading } from './readings';

/** Cents around the settled pitch that belong to it: vibrato and droop, not scoop and glide. */
const SETTLED = 45;
/** A note that is shorter is never called unsteady. Seconds. */
const SHORT = 0.12;
/** Share of an unsettled note's readings near their middle that still makes it steady. */
const STEADY = 0.6;
/** Rates of vibrato, swings a second; and its least extent, cents. */
const VIBRATO = { slowest: 3, fastest: 9.5, least: 4, seconds: 0.4 } as const;
/** Edges of a note that are left out when its pitch is taken: attack and release move it. Seconds. */
const EDGE = 0.02;

/** Swings of pitch: crossings of the mean, after the drift is taken out. */
const vibratoOf = (readings: readonly Reading[]): HeardVibrato | null => {
  const [first, last] = [readings[0], readings.at(-1)];
  if (first === undefined || last === undefined || last.time - first.time < VIBRATO.seconds) return null;
  const middle = (first.time + last.time) / 2;
  const mean = readings.reduce((sum, { cents }) => sum + cents, 0) / readings.length;
  const spread = readings.reduce((sum, { time }) => sum + (time - middle) ** 2, 0);
  const slope = readings.reduce((sum, { time, cents }) => sum + (time - middle) * (cents - mean), 0) / spread;
  const swings = readings.map(({ time, cents }) => cents - mean - slope * (time - middle));
  const extent = Math.sqrt((2 * swings.reduce((sum, value) => sum + value * value, 0)) / swings.length);
  // A crossing counts once the swing has come a third of its extent beyond.
  const crossings: number[] = [];
  let side = 0;
  for (const [i, { time }] of readings.entries()) {
    const swing = swings[i] ?? 0;
    if (Math.abs(swing) < extent / 3 || Math.sign(swing) === side) continue;
    if (side !== 0) crossings.push(time);
    side = Math.sign(swing);
  }
  if (extent < VIBRATO.least || crossings.length < 4) return null;
  const rate =
    (crossings.length - 1) / 2 / (elementAt(crossings, crossings.length - 1) - elementAt(crossings, 0));
  if (rate < VIBRATO.slowest || rate > VIBRATO.fastest) return null;
  return { rate, cents: asCents(extent) };
};

const movementOf = (readings: readonly Reading[], settled: number, from: number): Movement => {
  const far = (reading: Reading): boolean => Math.abs(reading.cents - settled) > SETTLED / 2;
  const near = readings.find((reading) => !far(reading));
  const awayAt = (index: number): number => (readings.at(index)?.cents ?? settled) - settled;
  return {
    start: asCents(awayAt(0)),
    settling: asSeconds(near === undefined || near === readings[0] ? 0 : Math.max(0, near.time - from)),
    end: asCents(awayAt(-1)),
  };
};

/** The readings a note's pitch is taken from: those near where it settled, without the edges. */
const settledReadings = ({ readings, anchor, from, to }: Span): readonly Reading[] => {
  const last = readings.at(-1)?.time ?? from;
  const end = Math.min(to ?? last, last);
  const edge = Math.min(EDGE, (end - from) / 4);
  const inner = readings.filter(({ time }) => time >= from + edge && time <= end - edge);
  const used = inner.length > 0 ? inner : readings;
  const middle = anchor ?? highMedian(used.map(({ cents }) => cents));
  const near = used.filter(({ cents }) => Math.abs(cents - middle) <= SETTLED);
  return near.length > 0 ? near : used;
};

const isSteady = ({ anchor, readings, from, to }: Span): boolean => {
  const last = readings.at(-1)?.time ?? from;
  if (anchor !== null || (to ?? last) - from < SHORT) return true;
  const middle = highMedian(readings.map(({ cents }) => cents));
  const near = readings.filter(({ cents }) => Math.abs(cents - middle) <= SETTLED);
  return near.length >= STEADY * readings.length;
};

/** What a span sounds like as a note: its settled pitch is the median, which listeners take for it. */
export const measureNote = (span: Span): HeardPitch => {
  const { id, from, to, readings, joined } = span;
  const settled = settledReadings(span);
  const cents = highMedian(settled.map((reading) => reading.cents));
  const loud = highMedian(readings.map(({ level }) => level));
  return {
    id,
    from: asSeconds(Math.max(0, from)),
    to: to === null ? null : asSeconds(to),
    frequency: asHz(STANDARD_PITCH * 2 ** ((cents - 6900) / 1200)),
    level: loud,
    steady: isSteady(span),
    joined,
    vibrato: vibratoOf(settled),
    movement: movementOf(readings, cents, from),
  };
};
