import { type Bytes, bigEndian, type TrackEvent } from './midi-bytes';
import type { PlacedNote } from './midi-timeline';

/**
 * Glides as pitch bend: 14 bits, 8192 in the middle; registered parameter 0,0 sets how many semitones the whole
 * wheel covers (General MIDI 1 starts at two). A bend moves everything that sounds on the channel.
 */
const CENTRE = 8192;
const USUAL_RANGE = 2;
/** A value every 10 ticks is about 10 ms at 120 beats a minute: finer than a step can be heard. */
const STEP_TICKS = 10;

/** Where bends stand among events of one tick: after the note that ends, before the note that begins. */
const BEND_RANK = 2;

/** The wheel for a distance in semitones when it covers ±`range`. Throws RangeError beyond the range. */
export const bendValue = (semitones: number, range: number): number => {
  if (!(Math.abs(semitones) <= range)) {
    throw new RangeError(`A bend must be within ${range} semitones, got ${semitones}`);
  }
  return Math.min(2 * CENTRE - 1, CENTRE + Math.round((semitones / range) * CENTRE));
};

/** The range that holds every glide of these notes, in whole semitones; 0 when none glides. */
export const bendRange = (notes: readonly PlacedNote[]): number => {
  const widest = notes.reduce((most, { event }) => Math.max(most, Math.abs(event.glideFrom ?? 0)), 0);
  return widest === 0 ? 0 : Math.max(USUAL_RANGE, Math.ceil(widest));
};

/** Sets the wheel's range, then lets go of the parameter so that a later data entry cannot change it. */
export const rangeEvents = (channel: number, range: number): readonly Bytes[] =>
  [
    [101, 0],
    [100, 0],
    [6, range],
    [38, 0],
    [101, 127],
    [100, 127],
  ].map(([controller = 0, value = 0]) => [0xb0 + channel, controller, value]);

const bendBytes = (channel: number, value: number): Bytes => {
  const [high = 0, low = 0] = bigEndian(Math.floor(value / 128) * 256 + (value % 128), 2);
  return [0xe0 + channel, low, high];
};

/** The bends of one gliding note: from its distance in even steps back to the middle, at the latest when it ends. */
const glideEvents = (
  { from, to, event }: PlacedNote,
  channel: number,
  range: number,
): readonly TrackEvent[] => {
  const distance = event.glideFrom ?? 0;
  if (distance === 0) return [];
  const length = Math.max(1, Math.min(to - from, Math.round(event.glideTicks ?? 0)));
  const steps = Math.ceil(length / STEP_TICKS);
  return Array.from({ length: steps + 1 }, (_, step) => ({
    at: from + Math.round((length * step) / steps),
    rank: BEND_RANK,
    bytes: bendBytes(channel, bendValue(distance * (1 - step / steps), range)),
  }));
};

const nextStart = (notes: readonly PlacedNote[], index: number): number => {
  const from = notes[index]?.from ?? 0;
  for (let later = index + 1; later < notes.length; later += 1) {
    const start = notes[later]?.from ?? from;
    if (start > from) return start;
  }
  return Number.POSITIVE_INFINITY;
};

/** Every bend of a part. A glide that is still under way when a later note begins ends there. */
export const bendEvents = (
  notes: readonly PlacedNote[],
  channel: number,
  range: number,
): readonly TrackEvent[] =>
  notes.flatMap((note, index) => {
    const events = glideEvents(note, channel, range);
    if (events.length === 0) return [];
    const next = nextStart(notes, index);
    const kept = events.filter(({ at }) => at < next);
    const isCut = kept.length < events.length;
    return isCut ? [...kept, { at: next, rank: BEND_RANK - 1, bytes: bendBytes(channel, CENTRE) }] : kept;
  });
