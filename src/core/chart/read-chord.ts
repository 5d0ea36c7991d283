import type { Chord, NoteName } from '../theory/chord';
import { readSymbol } from '../theory/chords';
import { pitchClassOf } from '../theory/pitch';
import { asPitchClass } from '../theory/units';
import { otherSpellings, plainSymbol } from './chord-spellings';
import { readRomanChord, romanChord, romanOf } from './roman';

/** A chord as typed, in its key. `rest` is the part of the text left out of it, usually empty. */
export interface ReadChord {
  readonly chord: Chord;
  readonly rest: string;
}

/** Semitones of the plain steps of a scale, 1–7. */
const PLAIN_STEPS = [0, 2, 4, 5, 7, 9, 11] as const;
const SIGNS = ['bb', 'b', '', '#', '##'] as const;
const LETTERS = 'CDEFGAB';

/** What may be left off the end of a symbol without changing what the chord is: additions, alterations, omissions. */
const ADDITION = /(?:add|omit|no|sus|[#b+-])?\d{1,2}$|alt$|sus$/;

const sameChord = (a: Chord, b: Chord): boolean =>
  a.symbol === b.symbol && a.tones.every((tone, i) => tone.name === b.tones[i]?.name);

/** The numeral that keeps the root's letter: Gb7 in C is `bV7`, where the usual numeral would be `#IV7`. */
const literalRoman = (chord: Chord, tonic: NoteName, usual: string): string | null => {
  const step = (LETTERS.indexOf(chord.rootName.charAt(0)) - LETTERS.indexOf(tonic.charAt(0)) + 7) % 7;
  const semitones = asPitchClass(chord.root - pitchClassOf(tonic));
  const alteration = asPitchClass(semitones - (PLAIN_STEPS[step] ?? 0) + 6) - 6;
  const sign = SIGNS[alteration + 2];
  const [, numeral = '', suffix = ''] = /^[#b]*([IViv]+)(.*)$/.exec(usual) ?? [];
  const plain = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'][step];
  if (sign === undefined || plain === undefined || (step === 0 && alteration < 0)) return null;
  return `${sign}${numeral === numeral.toLowerCase() ? plain.toLowerCase() : plain}${suffix}`;
};

/**
 * The chord as its numeral in the key gives it, so that every key keeps it the same: spelled as typed where a
 * numeral can say so, otherwise as usual in the key.
 */
export const chordInKey = (chord: Chord, tonic: NoteName): Chord => {
  const usual = romanChord(romanOf(chord, tonic), tonic);
  if (sameChord(usual, chord)) return usual;
  const roman = literalRoman(chord, tonic, usual.roman);
  const literal = roman === null ? null : readRomanChord(roman, tonic);
  return literal !== null && sameChord(literal, chord) ? literal : usual;
};

const ROMAN_GLYPHS: readonly (readonly [RegExp, string])[] = [
  [/♭/g, 'b'],
  [/♯/g, '#'],
  [/[△∆Δ]7?/g, 'maj7'],
  [/Ø/g, 'ø'],
  [/ø7/g, 'ø'],
  [/[º˚]/g, '°'],
  [/[()\s,]/g, ''],
];

/** A numeral, or one of another degree's key: `V7/ii` is the dominant of the two chord. */
const readNumeral = (text: string, tonic: NoteName): Chord | null => {
  const plain = ROMAN_GLYPHS.reduce((each, [from, to]) => each.replace(from, to), text);
  const direct = readRomanChord(plain, tonic, { sevenths: true });
  if (direct !== null) return direct;
  const [, numeral, target] = /^(.+)\/([#b]*[IViv]+)$/.exec(plain) ?? [];
  const aim = target === undefined ? null : readRomanChord(target, tonic);
  return numeral === undefined || aim === null
    ? null
    : readRomanChord(numeral, aim.rootName, { sevenths: true });
};

const readWhole = (text: string, tonic: NoteName): Chord | null => {
  const plain = plainSymbol(text);
  for (const symbol of otherSpellings(plain)) {
    const chord = readSymbol(symbol);
    if (chord !== null) return chord;
  }
  return readNumeral(text, tonic);
};

/** The chord dictionary looks names up in plain objects and finds what every object inherits: `constructor` is no chord. */
const INHERITED = Object.getOwnPropertyNames(Object.prototype);

/** Longer than any chord; keeps what is pasted by mistake from being tried in every way. */
const LONGEST_CHORD = 40;

const isHopeless = (text: string): boolean =>
  text.length > LONGEST_CHORD || INHERITED.some((name) => text.includes(name));

/** Leaves additions off the end, one by one, until a chord is known. */
const readTrimmed = (text: string, tonic: NoteName): ReadChord | null => {
  let known = text
    .replace(/[()\s,]/g, '')
    .replace(/♭/g, 'b')
    .replace(/♯/g, '#');
  const whole = known;
  while (ADDITION.test(known)) {
    known = known.replace(ADDITION, '');
    const chord = readWhole(known, tonic);
    if (chord !== null) return { chord, rest: whole.slice(known.length) };
  }
  return null;
};

/**
 * Reads one chord as musicians write it: a symbol (`Bb7`, `F#ø7`, `C△7/E`, `C7(b9, 13)`) or a numeral in the key
 * (`IV7`, `#ivo7`, `V7/ii`; plain numerals are sevenths, as in the built-in forms, and `Imaj` is a triad). Of a
 * symbol with unknown additions the known part is read. Null when it is no chord. Never throws on any text.
 */
export const readChord = (text: string, tonic: NoteName): ReadChord | null => {
  if (isHopeless(text)) return null;
  const whole = readWhole(text, tonic);
  const read = whole === null ? readTrimmed(text, tonic) : { chord: whole, rest: '' };
  return read === null ? null : { ...read, chord: chordInKey(read.chord, tonic) };
};

/** A spelling close to the text that is a chord, for "did you mean"; null when none is likely. */
export const likelyChord = (text: string): string | null => {
  if (isHopeless(text)) return null;
  const capital = text.charAt(0).toUpperCase() + text.slice(1);
  const tries = [capital, capital.replace(/^H/, 'B'), capital.replace(/[^A-Ga-z0-9#b♯♭°ø△Δ+/-]/g, '')];
  return tries.find((each) => each !== text && !/[xX]/.test(each) && readSymbol(each) !== null) ?? null;
};
