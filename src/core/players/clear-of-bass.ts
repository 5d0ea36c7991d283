import type { NoteEvent } from '../score/score';
import { asTicks } from '../theory/units';

/** Chords stay this far above the bass, in semitones: nearer is mud, and below it another root (common practice, no source). */
const LEAST_APART = 3;

/** A semitone over the bass, octaves apart: the clash no style here wants held (common practice, no source). */
const rubs = (chordPitch: number, bassPitch: number): boolean => (chordPitch - bassPitch) % 12 === 1;

/** A note that would be cut shorter than this, in ticks, is left out. */
const SHORTEST = 30;

/** The note as long as it can sound without a minor ninth over the bass; null where it could not even begin. */
const cleared = (note: NoteEvent, bass: readonly NoteEvent[], passing: number): NoteEvent | null => {
  const end = note.at + note.length;
  const clash = bass.find(
    (low) =>
      Math.min(end, low.at + low.length) - Math.max(note.at, low.at) >=
      (note.pitch - low.pitch < LEAST_APART
        ? SHORTEST
        : rubs(note.pitch, low.pitch)
          ? passing - 1
          : Infinity),
  );
  if (clash === undefined) return note;
  const room = clash.at - note.at;
  return room < SHORTEST ? null : { ...note, length: asTicks(room) };
};

/** Notes by stretches of time, in ticks, so that what sounds together is found without asking every note. */
const STRETCH = 1920;

const stretchesOf = ({ at, length }: NoteEvent): readonly number[] => {
  const first = Math.floor(at / STRETCH);
  return Array.from({ length: Math.floor((at + length) / STRETCH) - first + 1 }, (_, i) => first + i);
};

/** The notes that may sound together with a note, the earlier ones first. */
const companions = (notes: readonly NoteEvent[]): ((note: NoteEvent) => readonly NoteEvent[]) => {
  const sorted = [...notes].sort((a, b) => a.at - b.at);
  const byStretch = new Map<number, NoteEvent[]>();
  for (const note of sorted) {
    for (const stretch of stretchesOf(note))
      byStretch.set(stretch, [...(byStretch.get(stretch) ?? []), note]);
  }
  return (note) => stretchesOf(note).flatMap((stretch) => byStretch.get(stretch) ?? []);
};

/**
 * Chords that leave the bass room: a voice that would lie within three semitones of the bass, or a minor ninth above it for a triplet eighth or longer
 * (`passing`, in ticks) is released when the bass comes, or left out where the bass is there already.
 */
export const clearOfBass = (
  chords: readonly NoteEvent[],
  bass: readonly NoteEvent[],
  passing: number,
): readonly NoteEvent[] => {
  const around = companions(bass);
  return chords.flatMap((note) => {
    const kept = cleared(note, around(note), passing);
    return kept === null ? [] : [kept];
  });
};
