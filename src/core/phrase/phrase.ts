import type { MeterName } from '../chart/chart';
import type { Breath, Harp, Sound, Technique } from '../harp/harp';
import { soundId } from '../harp/tab';
import type { Ticks } from '../theory/units';
import type { Dynamic } from './dynamics';

/** A sound as a player thinks of it: what to do, whatever the harp's key. */
export interface PhraseSound {
  readonly hole: number;
  readonly breath: Breath;
  readonly technique: Technique;
  /** Semitones below the natural note; 0 unless `technique` is `bend`. */
  readonly bend: number;
}

/** How a note is played, where it is more than held; what is absent is usual. */
export interface PhraseManner {
  /** Absent for `mf`. */
  readonly dynamic?: Dynamic;
  readonly accent?: true;
  /**
   * The bend as a curve: cents below the reed's natural note at points spread evenly from the note's beginning to its
   * end, the first within the semitone of the note's own sound. One point is a bend held between two keys.
   */
  readonly curve?: readonly number[];
  /** The hole the mouth slides from, over all between, on the same breath. */
  readonly slide?: number;
  /** The hole the note alternates with, on the same breath: a shake. */
  readonly shake?: number;
}

/** One note, or several holes on one breath: a chord where they lie side by side, else a split or an octave. */
export interface PhraseNote extends PhraseManner {
  /** From the phrase's start, unswung: an off-beat eighth lies half-way. */
  readonly at: Ticks;
  readonly length: Ticks;
  /** At least one, all on the same breath. */
  readonly sounds: readonly PhraseSound[];
}

/**
 * A short piece of melody that fits any harp of the same tuning: sounds and times, no pitches, no tempo. Notes are
 * in order and do not overlap; silence is what lies between them and after them up to `length`.
 */
export interface Phrase {
  readonly meter: MeterName;
  readonly length: Ticks;
  readonly notes: readonly PhraseNote[];
}

/** A phrase note with the sounds of a certain harp. */
export interface HarpNote {
  readonly at: Ticks;
  readonly length: Ticks;
  readonly sounds: readonly Sound[];
  /** As it is asked for. */
  readonly note: PhraseNote;
  /** Natural notes a slide goes over, in order, and the one a shake alternates with. */
  readonly slide: readonly Sound[];
  readonly shake: Sound | null;
}

/** A phrase on a certain harp. */
export interface PhraseOnHarp {
  readonly notes: readonly HarpNote[];
  /** Ids of sounds this harp does not have, each once; their notes are silent. */
  readonly missing: readonly string[];
}

/** The holes from a slide's beginning up to, and without, the note it lands on. */
const slideHoles = (from: number, to: number): readonly number[] =>
  Array.from({ length: Math.abs(to - from) }, (_, i) => from + i * Math.sign(to - from));

/** Finds a phrase's sounds on a harp; what the harp does not have is named and left silent. */
export const onHarp = (phrase: Phrase, harp: Harp): PhraseOnHarp => {
  const sounds = new Map(harp.sounds.map((sound) => [soundId(sound), sound]));
  const missing = new Set<string>();
  const find = (wanted: PhraseSound): Sound | null => {
    const sound = sounds.get(soundId(wanted)) ?? null;
    if (sound === null) missing.add(soundId(wanted));
    return sound;
  };
  const notes = phrase.notes.flatMap((note): readonly HarpNote[] => {
    const found = note.sounds.flatMap((each) => find(each) ?? []);
    const [first] = found;
    if (first === undefined) return [];
    const { hole, breath } = first;
    const besides = (at: number): Sound | null => find({ hole: at, breath, technique: 'natural', bend: 0 });
    const slide =
      note.slide === undefined ? [] : slideHoles(note.slide, hole).flatMap((at) => besides(at) ?? []);
    const shake = note.shake === undefined ? null : besides(note.shake);
    return [{ at: note.at, length: note.length, sounds: found, note, slide, shake }];
  });
  return { notes, missing: [...missing] };
};

/** A harp's sound as a phrase keeps it. */
export const phraseSound = ({ hole, breath, technique, bend }: PhraseSound): PhraseSound => ({
  hole,
  breath,
  technique,
  bend,
});
