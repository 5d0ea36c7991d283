import type { AskedNote, PlayedNote } from '../../src/core/judging/asked-notes';

/** Somebody who plays what is asked, in some way of their own. */
export type Player = (asked: readonly AskedNote[]) => readonly PlayedNote[];

/** A fault laid over whatever somebody plays; it knows what was asked. */
export type PlayerFault = (
  played: readonly PlayedNote[],
  asked: readonly AskedNote[],
) => readonly PlayedNote[];

/** Plays everything as it is asked. */
export const perfect: Player = (asked) =>
  asked.map(({ at, length, pitches, sound }) => ({
    at,
    length: 0.9 * length,
    pitch: pitches[0] ?? 0,
    sounds: [sound],
  }));

/** Every note by so many seconds. */
export const lateBy =
  (seconds: number): PlayerFault =>
  (played) =>
    played.map((note) => ({ ...note, at: note.at + seconds }));

/** Notes of certain keys off by so many cents. */
export const offBy =
  (cents: number, isIt: (note: PlayedNote) => boolean): PlayerFault =>
  (played) =>
    played.map((note) => (isIt(note) ? { ...note, pitch: note.pitch + cents / 100 } : note));

/** Leaves out every so-manyth note. */
export const dropping =
  (every: number): PlayerFault =>
  (played) =>
    played.filter((_, i) => (i + 1) % every !== 0);

/** At another tempo: 0.5 is twice as fast. */
export const atRate =
  (rate: number): PlayerFault =>
  (played) =>
    played.map((note) => ({ ...note, at: note.at * rate, length: note.length * rate }));

/** A short note from a tone above before each. */
export const ornamented: PlayerFault = (played) =>
  played.flatMap((note) => [{ at: note.at - 0.07, length: 0.06, pitch: note.pitch + 2, sounds: [] }, note]);
