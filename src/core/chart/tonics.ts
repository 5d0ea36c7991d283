import type { NoteName } from '../theory/chord';
import { type KeyMode, keyName, pitchClassOf } from '../theory/pitch';
import { asPitchClass } from '../theory/units';
import type { BarKey } from './chart';
import { romanChord, STEP_NUMERALS } from './roman';

/** Key notes by mode: one for each key signature from seven flats to seven sharps, up the chromatic scale. */
export const TONICS: Readonly<Record<KeyMode, readonly NoteName[]>> = {
  major: ['C', 'C#', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B', 'Cb'],
  minor: ['C', 'C#', 'D', 'D#', 'Eb', 'E', 'F', 'F#', 'G', 'G#', 'Ab', 'A', 'A#', 'Bb', 'B'],
};

/**
 * The key of a section as it is spelled beside the chart's own: by the usual numeral of its step (E flat is the flat
 * three of C), or as the key is usually written where that would take more than seven signs.
 */
export const sectionKey = ({ tonic, mode }: BarKey, home: NoteName): BarKey => {
  const pitchClass = pitchClassOf(tonic);
  const numeral = STEP_NUMERALS[asPitchClass(pitchClass - pitchClassOf(home))] ?? 'I';
  const { rootName } = romanChord(numeral, home);
  return { tonic: TONICS[mode].includes(rootName) ? rootName : keyName(pitchClass, mode), mode };
};
