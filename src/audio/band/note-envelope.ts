/** How loud a note is from its start to its end, for sources of the browser and for samples alike. */
import type { PartId } from '../../core/score/score';
import type { FoundSound } from '../bank/sound-cache';
import { isHeld, type ScheduledNote } from '../transport/scheduled-note';
import { heldUntil, type NoteSound, type Timed } from './note-sound';

/** The gain of a note over time: level from the start, then down to 0 within `release` from `until`. */
export interface Envelope {
  readonly at: number;
  readonly level: number;
  readonly until: number;
  readonly release: number;
}

/** What may end, or be ended by, another note. */
export interface Struck {
  readonly part: PartId;
  readonly pitch: number;
  readonly envelope: Envelope;
}

/**
 * Time constant of cuts, in seconds: over in 8 ms, which is felt as at once and does not click. Exponential approaches
 * begin where the level is even when the page is late, and a note that goes on through a cut keeps its level, since
 * what falls and what rises add up to one.
 */
export const CUT = 0.002;
/** After so long nothing of a cut note is left (−80 dB). */
export const CUT_OVER = 0.02;
/** Shortest fade at a note's own end. */
export const FADE = 0.008;

/** General MIDI keys of the hi-hat (closed, pedal, open): striking one ends the open one. */
const HI_HATS: ReadonlySet<number> = new Set([42, 44, 46]);
const OPEN_HI_HAT = 46;

/** The envelope of a note that begins at a time with a sound. */
export const envelopeOf = (
  note: ScheduledNote,
  { found, level }: NoteSound<Timed>,
  at: number,
): Envelope => ({
  at,
  level,
  until: Math.max(heldUntil(note, found), at + CUT_OVER),
  release: isHeld(note.event.part) ? Math.max(found.sound.release, FADE) : FADE,
});

/** When nothing is left of it. */
export const endOf = ({ until, release }: Envelope): number => until + release;

/** Its gain at a time after its start. */
export const gainAt = ({ level, until, release }: Envelope, time: number): number =>
  time <= until ? level : level * Math.max(0, 1 - (time - until) / release);

/** What is left of an envelope that was cut at a time. */
export const cutEnvelope = (envelope: Envelope, at: number): Envelope => ({
  ...envelope,
  until: Math.min(envelope.until, at),
  release: CUT_OVER,
});

/** Whether what sounds is too near its end to be cut at a time. */
export const endsBy = (envelope: Envelope, at: number): boolean => endOf(envelope) <= at + FADE;

/** Whether a note ends another: a string or key struck again stops its last note; a hi-hat closes the open one. */
export const makesWay = (
  { part, pitch, envelope }: Struck,
  next: Omit<Struck, 'envelope'>,
  at: number,
): boolean => {
  if (part !== next.part || envelope.at >= at || endOf(envelope) <= at) return false;
  const same = isHeld(part) && pitch === next.pitch;
  return same || (part === 'drums' && pitch === OPEN_HI_HAT && HI_HATS.has(next.pitch));
};

/** The frequency ratio a note glides in from, 1 where it does not, and the seconds it takes. */
export const glideOf = ({
  event,
  glideSeconds,
  offset,
}: ScheduledNote): { ratio: number; seconds: number } => {
  const from = event.glideFrom ?? 0;
  if (from === 0 || glideSeconds <= 0) return { ratio: 1, seconds: 0 };
  const left = from * (glideSeconds / (glideSeconds + offset));
  return { ratio: 2 ** (left / 12), seconds: glideSeconds };
};

/** The sample nearest to a time, in seconds: sources that begin between two samples are blurred, and cost more. */
export const onSample = (seconds: number, sampleRate: number): number =>
  Math.round(seconds * sampleRate) / sampleRate;

/** Whether a sound has ended by itself before its envelope falls, so that its gain stands still. */
export const ringsOut = (envelope: Envelope, { sound, rate }: FoundSound<Timed>): boolean =>
  sound.loop === null && envelope.at + sound.samples.duration / rate <= envelope.until;
