import type { Chord, Degree, NoteName } from '../theory/chord';
import { bassNameOf, canonicalQuality, chordOf } from '../theory/chords';
import { degreeBetween, toneOf } from '../theory/degrees';
import { pitchClassOf, withoutDoubleAccidental } from '../theory/pitch';
import { asPitchClass } from '../theory/units';

/** The numerals of the seven steps. */
export const NUMERALS: readonly string[] = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'];

/** Suffixes that name their own kind, whatever the case of the numeral: `m7b5`, `dim7`, `o7`, `ø`, `sus4`. */
const OWN_KIND = /^(?:m(?!aj|a7)|-|dim|o|°|ø|h|aug|\+|5)|sus|alt/;

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

const ROMAN = /^(bb|b|##|#|)(IV|V?I{1,3}|V|iv|v?i{1,3}|v)(.*?)(?:\/((?:bb|b|##|#|)(?:[1-79]|11|13)))?$/;

const readRoman = (roman: string): RomanParts | null => {
  const [, sign, numeral, suffix = '', bass] =
    ROMAN.exec(roman.replace(/^([#b]*[IViv]+m?)6\/9/, '$169')) ?? [];
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

const qualityOf = (minor: boolean, suffix: string): string | null =>
  minor && !OWN_KIND.test(suffix)
    ? (canonicalQuality(`m${suffix}`) ?? canonicalQuality(suffix))
    : canonicalQuality(suffix);

/** The bass as a degree above the root, by the letters it is spelled with; empty where it is the root. */
const bassDegree = (chord: Chord): string => {
  if (chord.bass === chord.root) return '';
  const own = chord.tones.find(({ pitchClass }) => pitchClass === chord.bass)?.degree;
  return `/${own ?? degreeBetween(chord.rootName, bassNameOf(chord))}`;
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

/**
 * Like `readRomanChord`, for numerals of our own tables. Throws RangeError when the numeral cannot be read.
 *
 * @example
 * romanChord('V7', 'Eb').symbol // 'Bb7'
 * romanChord('bVI7', 'A').tones.map(({ name }) => name) // ['F', 'A', 'C', 'Eb']
 */
export const romanChord = (roman: string, tonic: NoteName, options?: RomanOptions): Chord => {
  const chord = readRomanChord(roman, tonic, options);
  if (chord === null) throw new RangeError(`Not a Roman numeral: "${roman}"`);
  return chord;
};

/** Numerals of the twelve steps above a tonic as blues and jazz charts write them: flats, but #IV and not bV. */
export const STEP_NUMERALS = [
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

/** The numeral's case and suffix for a quality: lower case for minor and diminished chords, which then need no `m`. */
const numeralOf = (numeral: string, quality: string): string => {
  const lower = numeral.toLowerCase();
  if (quality.startsWith('dim')) return `${lower}o${quality.slice(3)}`;
  if (/^m\d+b5/.test(quality)) return lower + quality;
  return /^m(?!aj)/.test(quality) ? lower + quality.slice(1).replace(/^Maj/, 'maj') : numeral + quality;
};

/** The Roman numeral of a chord in a key, so that `romanChord` of it gives the chord's tones again. */
export const romanOf = (chord: Chord, tonic: NoteName): string => {
  const numeral = STEP_NUMERALS[asPitchClass(chord.root - pitchClassOf(tonic))] ?? 'I';
  return `${numeralOf(numeral, chord.quality)}${bassDegree(chord)}`;
};
