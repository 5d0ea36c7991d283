import type { Chord, Degree, NoteName } from '../theory/chord';
import { canonicalQuality, chordOf } from '../theory/chords';
import { semitonesOf, toneOf } from '../theory/degrees';
import { pitchClassOf, withoutDoubleAccidental } from '../theory/pitch';
import { asPitchClass } from '../theory/units';

const NUMERALS: readonly string[] = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'];

/**
 * What a suffix adds to a lower-case numeral, where it differs from the suffix itself; upper case takes the suffix
 * as the quality. Any suffix that names its own kind (`m7b5`, `dim7`, `o7`, `ø`) overrides the case.
 */
const MINOR_SUFFIXES: Readonly<Record<string, string>> = {
  '': 'm',
  '6': 'm6',
  '7': 'm7',
  '9': 'm9',
  '11': 'm11',
  '13': 'm13',
  '69': 'm69',
  '6add9': 'm69',
  add9: 'madd9',
  maj7: 'mMaj7',
  M7: 'mMaj7',
  maj9: 'mM9',
  b5: 'dim',
  '7b5': 'm7b5',
  '9b5': 'm9b5',
};

/** How plain numerals sound. */
export interface RomanOptions {
  /** Plain numerals become sevenths, as the blues plays them: I → I7 (dominant), i → i7 (minor seventh). */
  readonly sevenths: boolean;
}

interface RomanParts {
  readonly step: Degree;
  readonly minor: boolean;
  readonly numeral: string;
  readonly suffix: string;
  readonly bass: Degree | null;
}

const ROMAN = /^(bb|b|##|#|)(IV|V?I{1,3}|V|iv|v?i{1,3}|v)(.*?)(?:\/((?:b|#|)(?:[2-79]|11|13)))?$/;

const readRoman = (roman: string): RomanParts | null => {
  const [, sign, numeral, suffix = '', bass] = ROMAN.exec(roman.replace('6/9', '69')) ?? [];
  if (sign === undefined || numeral === undefined) return null;
  const number = NUMERALS.indexOf(numeral.toUpperCase()) + 1;
  if (number === 0) return null;
  const step = number === 1 && sign === '' ? 'R' : `${sign}${number}`;
  return {
    step,
    minor: numeral === numeral.toLowerCase(),
    numeral: `${sign}${numeral}`,
    suffix,
    bass: bass ?? null,
  };
};

const qualityOf = (minor: boolean, suffix: string): string | null => {
  const quality = minor ? (MINOR_SUFFIXES[suffix] ?? suffix) : suffix;
  return canonicalQuality(quality);
};

/**
 * Reads a Roman numeral in a key, or null when it is none: accidental and numeral (upper case dominant or major,
 * lower case minor), then a quality as in chord symbols, then `/` and the bass as a degree above the root (`I7/3`).
 * Roots that would need a double accidental are written plain (bVI of Db is A).
 */
export const readRomanChord = (
  roman: string,
  tonic: NoteName,
  options: RomanOptions = { sevenths: false },
): Chord | null => {
  const parts = readRoman(roman);
  if (parts === null) return null;
  const suffix = parts.suffix === '' && options.sevenths ? '7' : parts.suffix;
  const quality = qualityOf(parts.minor, suffix);
  if (quality === null) return null;
  const root = withoutDoubleAccidental(toneOf(tonic, parts.step).name);
  const full = `${parts.numeral}${suffix}${parts.bass === null ? '' : `/${parts.bass}`}`;
  if (parts.bass === null) return chordOf({ root, quality, roman: full });
  const bass = withoutDoubleAccidental(toneOf(root, parts.bass).name);
  return chordOf({ root, quality, bass, roman: full });
};

/** Like `readRomanChord`, for numerals of our own tables. Throws RangeError when the numeral cannot be read. */
export const romanChord = (roman: string, tonic: NoteName, options?: RomanOptions): Chord => {
  const chord = readRomanChord(roman, tonic, options);
  if (chord === null) throw new RangeError(`Not a Roman numeral: "${roman}"`);
  return chord;
};

/** Numerals of the twelve steps above a tonic as blues and jazz charts write them: flats, but #IV and not bV. */
const STEP_NUMERALS = [
  'I',
  'bII',
  'II',
  'bIII',
  'III',
  'IV',
  '#IV',
  'V',
  'bVI',
  'VI',
  'bVII',
  'VII',
] as const;

/** Degrees for a bass note above a root, by semitones. */
const BASS_DEGREES: readonly Degree[] = ['R', 'b2', '2', 'b3', '3', '4', 'b5', '5', 'b6', '6', 'b7', '7'];

/** Qualities of lower-case numerals and the suffix they keep there. */
const MINOR_QUALITIES: Readonly<Record<string, string>> = {
  m: '',
  m6: '6',
  m7: '7',
  m9: '9',
  m11: '11',
  m13: '13',
  m69: '69',
  madd9: 'add9',
  mMaj7: 'maj7',
  mM9: 'maj9',
  dim: 'o',
  dim7: 'o7',
  m7b5: 'm7b5',
};

/** The Roman numeral of a chord in a key, so that `romanChord` of it gives the chord's tones again. */
export const romanOf = (chord: Chord, tonic: NoteName): string => {
  const numeral = STEP_NUMERALS[asPitchClass(chord.root - pitchClassOf(tonic))] ?? 'I';
  const minorSuffix = MINOR_QUALITIES[chord.quality];
  const name = minorSuffix === undefined ? numeral + chord.quality : numeral.toLowerCase() + minorSuffix;
  if (chord.bass === chord.root) return name;
  const semitones = asPitchClass(chord.bass - chord.root);
  const own = chord.tones.find(({ degree }) => semitonesOf(degree) === semitones)?.degree;
  return `${name}/${own ?? BASS_DEGREES[semitones]}`;
};
