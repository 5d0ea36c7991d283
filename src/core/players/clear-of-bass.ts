import type { NoteEvent } from '../score/score';
import { asMidi, asTicks } from '../theory/units';
import { movement } from './voicing';

/** Chords stay this far above the bass, in semitones: nearer is mud, and below it another root (common practice, no source). */
const LEAST_APART = 3;

/** A semitone over the bass, octaves apart: the clash no style here wants held (common practice, no source). */
const rubs = (chordPitch: number, bassPitch: number): boolean => (chordPitch - bassPitch) % 12 === 1;

/** A note that would be cut shorter than this, in ticks, is left out. */
const SHORTEST = 30;

type Sounding = Pick<NoteEvent, 'at' | 'length' | 'pitch'>;

/** What of the bass would cut a note short: a minor ninth below it, or too near. */
const clashOf = (note: Sounding, bass: readonly NoteEvent[], passing: number): NoteEvent | undefined => {
  const end = note.at + note.length;
  return bass.find(
    (low) =>
      Math.min(end, low.at + low.length) - Math.max(note.at, low.at) >=
      (note.pitch - low.pitch < LEAST_APART
        ? SHORTEST
        : rubs(note.pitch, low.pitch)
          ? passing - 1
          : Infinity),
  );
};

/** The note as long as it can sound without a minor ninth over the bass; null where it could not even begin. */
const cleared = (note: NoteEvent, bass: readonly NoteEvent[], passing: number): NoteEvent | null => {
  const clash = clashOf(note, bass, passing);
  if (clash === undefined) return note;
  const room = clash.at - note.at;
  return room < SHORTEST ? null : { ...note, length: asTicks(room) };
};

/** Notes by stretches of time, in ticks, so that what sounds together is found without asking every note. */
const STRETCH = 1920;

const stretchesOf = ({ at, length }: Sounding): readonly number[] => {
  const first = Math.floor(at / STRETCH);
  return Array.from({ length: Math.floor((at + length) / STRETCH) - first + 1 }, (_, i) => first + i);
};

/** The notes that may sound together with a note, the earlier ones first. */
const companions = (notes: readonly NoteEvent[]): ((note: Sounding) => readonly NoteEvent[]) => {
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

/** A note that the bass would cut to less than this share of its length has no place over it. */
const LEAST_LEFT = 0.5;
/** What a voice more or fewer costs a voicing that stands in for another, in semitones of movement. */
const RESIZE = 4;

/** A stroke is voiced otherwise for a rub of this share of a beat: the shortest stabs are longer. */
export const SHORTEST_RUB = 1 / 8;

/** A stroke and where it stands. */
interface Struck {
  readonly pitches: readonly number[];
  readonly at: number;
  readonly length: number;
}

/** Finds for a stroke the voicing nearest to its own of which every voice passes; its own where none does. */
type Revoice = (
  stroke: Struck,
  choices: () => readonly (readonly number[])[],
  passes?: (pitch: number) => boolean,
) => readonly number[];

/**
 * Voicings that leave the bass room to begin with, so that a chord does not lose voices to it: what `clearOfBass` would
 * leave out is voiced otherwise where the chord can be.
 * @param passing in ticks, as there.
 */
export const overBass = (bass: readonly NoteEvent[], passing: number): Revoice => {
  const around = companions(bass);
  return ({ pitches, at, length }, choices, passes = () => true) => {
    const stands = (pitch: number): boolean => {
      const note = { at: asTicks(at), length: asTicks(length), pitch: asMidi(pitch) };
      const clash = clashOf(note, around(note), passing);
      return passes(pitch) && (clash === undefined || clash.at - at >= length * LEAST_LEFT);
    };
    if (pitches.every(stands)) return pitches;
    const clear = choices().filter((each) => each.every(stands));
    const costs = clear.map(
      (each) => movement(pitches, each) + RESIZE * Math.abs(each.length - pitches.length),
    );
    return clear[costs.indexOf(Math.min(...costs))] ?? pitches;
  };
};
