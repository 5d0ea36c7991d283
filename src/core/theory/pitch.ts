import { Note } from 'tonal';
import type { NoteName } from './chord';
import { asPitchClass, type Midi, type PitchClass } from './units';

/** Whether a key's own third is major or minor. */
export type KeyMode = 'major' | 'minor';

/** Key names as musicians write them: the spelling with the fewer accidentals (common practice, no source). */
const KEY_NAMES: Readonly<Record<KeyMode, readonly NoteName[]>> = {
  major: ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'],
  minor: ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'G#', 'A', 'Bb', 'B'],
};

/** Scale steps of the twelve chromatic tones above a tonic: the flat side, as blues spells its thirds, fifths and sevenths. */
const CHROMATIC_INTERVALS = ['1P', '2m', '2M', '3m', '3M', '4P', '5d', '5P', '6m', '6M', '7m', '7M'] as const;

/** The twelve pitch classes, C first. */
export const PITCH_CLASSES: readonly PitchClass[] = Array.from({ length: 12 }, (_, i) => asPitchClass(i));

/** The spelled tonic of a song key: `Db` for a major, `C#` for a minor key on the same pitch. */
export const keyName = (key: PitchClass, mode: KeyMode): NoteName => {
  const name = KEY_NAMES[mode][key];
  if (name === undefined) throw new RangeError(`A key must be a pitch class from 0 to 11, got ${key}`);
  return name;
};

/** The pitch class of a spelled note (`Bb`, `F##`). Throws RangeError when the name is not a note. */
export const pitchClassOf = (name: NoteName): PitchClass => {
  const note = Note.get(name);
  if (note.empty) throw new RangeError(`Not a note name: "${name}"`);
  return asPitchClass(note.chroma);
};

/** True for names a key or chord may carry: a letter A–G with at most two accidentals, no octave. */
export const isNoteName = (text: string): text is NoteName => /^[A-G](#{0,2}|b{0,2})$/.test(text);

/** The same pitch with at most one accidental: `Bbb` becomes `A`, `Fb` stays. */
export const withoutDoubleAccidental = (name: NoteName): NoteName =>
  /##|bb/.test(name) ? Note.simplify(name) : name;

/** Spells a pitch class in a key, by its step above the tonic; double accidentals are written as the plain note. */
export const spellInKey = (pitchClass: PitchClass, tonic: NoteName): NoteName => {
  const step = CHROMATIC_INTERVALS[asPitchClass(pitchClass - pitchClassOf(tonic))];
  if (step === undefined) throw new RangeError(`A pitch class must be from 0 to 11, got ${pitchClass}`);
  return withoutDoubleAccidental(Note.transpose(tonic, step));
};

/**
 * Scientific pitch name of a key number, ASCII, spelled in a key: `Bb4`. C4 is 60; a `Cb` or `B#` counts its
 * octave by the letter. Throws RangeError on fractions.
 */
export const pitchName = (pitch: Midi, tonic: NoteName = 'C'): string => {
  if (!Number.isInteger(pitch)) throw new RangeError(`A pitch name needs a whole key number, got ${pitch}`);
  return spelledPitch(pitch, spellInKey(asPitchClass(pitch), tonic));
};

/**
 * Scientific pitch name of a key number under a given name, ASCII: 64 as `Fb` is `Fb4`, 59 as `Cb` is `Cb4`. Throws
 * RangeError when the pitch does not have that name.
 */
export const spelledPitch = (pitch: Midi, name: NoteName): string => {
  const octave = (pitch - Note.get(name).alt - pitchClassOf(name.charAt(0))) / 12 - 1;
  if (!Number.isInteger(octave)) throw new RangeError(`Key number ${pitch} is no ${name}`);
  return `${name}${octave}`;
};
