import type { MeterName } from '../chart/chart';
import type { Breath, Harp, Sound, Technique } from '../harp/harp';
import { soundId } from '../harp/tab';
import type { Ticks } from '../theory/units';

/** A sound as a player thinks of it: what to do, whatever the harp's key. */
export interface PhraseSound {
  readonly hole: number;
  readonly breath: Breath;
  readonly technique: Technique;
  /** Semitones below the natural note; 0 unless `technique` is `bend`. */
  readonly bend: number;
}

/** One note, or several holes on one breath. */
export interface PhraseNote {
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
}

/** A phrase on a certain harp. */
export interface PhraseOnHarp {
  readonly notes: readonly HarpNote[];
  /** Ids of sounds this harp does not have, each once; their notes are silent. */
  readonly missing: readonly string[];
}

/** Finds a phrase's sounds on a harp; what the harp does not have is named and left silent. */
export const onHarp = (phrase: Phrase, harp: Harp): PhraseOnHarp => {
  const sounds = new Map(harp.sounds.map((sound) => [soundId(sound), sound]));
  const missing = new Set<string>();
  const notes = phrase.notes.flatMap(({ at, length, sounds: wanted }): readonly HarpNote[] => {
    const found = wanted.flatMap((each) => {
      const sound = sounds.get(soundId(each));
      if (sound === undefined) missing.add(soundId(each));
      return sound ?? [];
    });
    return found.length === 0 ? [] : [{ at, length, sounds: found }];
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
