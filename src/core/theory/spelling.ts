import type { Chord, NoteName } from './chord';
import { keyName, spellInKey } from './pitch';
import { asPitchClass, type Midi, type PitchClass } from './units';

/** Gives a pitch class its name at some place of the music. */
export type Spell = (pitchClass: PitchClass) => NoteName;

/** The black keys of a piano. */
const BLACK_KEYS: ReadonlySet<number> = new Set([1, 3, 6, 8, 10]);

/** True for the black keys of a piano. */
export const isBlackKey = (pitch: number): boolean => BLACK_KEYS.has(asPitchClass(pitch));

/** A pitch by its plain name: white keys by their letter, black ones by the side of the key with this tonic. */
export const plainName = (pitch: number, tonic: NoteName): NoteName => {
  const pitchClass = asPitchClass(pitch);
  return isBlackKey(pitch) ? spellInKey(pitchClass, tonic) : keyName(pitchClass, 'major');
};

/**
 * How notes are called while a chord sounds: its tones as the chord spells them (over C7 in Eb its third is E, over
 * C#7 in E it is E#), all others plainly. Whatever names notes where a chord is known asks this.
 * @param tonic the key's spelled tonic.
 */
export const spellOver =
  (chord: Pick<Chord, 'tones'>, tonic: NoteName): Spell =>
  (pitchClass) =>
    chord.tones.find((tone) => tone.pitchClass === pitchClass)?.name ?? plainName(pitchClass, tonic);

/** The name of a whole key number while a chord sounds, without octave. */
export const spellPitch = (pitch: Midi | number, spell: Spell): NoteName =>
  spell(asPitchClass(Math.round(pitch)));
