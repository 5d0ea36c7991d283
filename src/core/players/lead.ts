import type { Sound } from '../harp/harp';
import type { NoteEvent } from '../score/score';
import { asMidi, asTicks, type Ticks } from '../theory/units';

/** A sound at a place, as lead notes are made from. */
export interface LeadSound {
  readonly at: Ticks;
  readonly length: Ticks;
  readonly sound: Sound;
}

/** Moderate, with the first note of a breath a little stronger (common practice, no source). */
const VELOCITY = { breathStarts: 92, goesOn: 84 } as const;
/** A bend slides for a sixteenth; a change of breath takes a moment of silence. */
const GLIDE_TICKS = 120;
const TURN_GAP_TICKS = 40;

const isSameReed = (a: Sound, b: Sound): boolean => a.hole === b.hole && a.breath === b.breath;

const leadNote = (note: LeadSound, before: LeadSound | null, after: LeadSound | null): NoteEvent => {
  const { at, length, sound } = note;
  const joined = before !== null && before.at + before.length >= at;
  const follows = after !== null && at + length >= after.at;
  const turns = follows && after.sound.breath !== sound.breath;
  const slides = joined && isSameReed(before.sound, sound) && before.sound.pitch !== sound.pitch;
  const goesOn = joined && before.sound.breath === sound.breath;
  const plain: NoteEvent = {
    part: 'lead',
    at,
    length: asTicks(Math.max(1, turns ? Math.max(length / 2, length - TURN_GAP_TICKS) : length)),
    pitch: asMidi(sound.pitch),
    velocity: goesOn ? VELOCITY.goesOn : VELOCITY.breathStarts,
  };
  if (!slides) return plain;
  const glideTicks = asTicks(Math.max(1, Math.min(GLIDE_TICKS, length / 2)));
  return { ...plain, glideFrom: before.sound.pitch - sound.pitch, glideTicks };
};

/**
 * Sounds one after the other as the harp voice plays them: a bend slides from the note before it on the same reed,
 * and a turn of the breath leaves a short gap. Sounds must be in order of time.
 */
export const leadNotes = (sounds: readonly LeadSound[]): readonly NoteEvent[] =>
  sounds.map((note, i) => leadNote(note, sounds[i - 1] ?? null, sounds[i + 1] ?? null));
