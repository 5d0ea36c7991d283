import { NUMERALS, readRomanChord, romanChord, romanOf } from '../chart/roman';
import type { Chord, NoteName } from '../theory/chord';
import { chordOf, readSymbol } from '../theory/chords';
import { degreeBetween, toneOf } from '../theory/degrees';
import { pitchClassOf, withoutDoubleAccidental } from '../theory/pitch';
import { plainSigns, withoutOuterBrackets } from '../theory/symbol-parts';

/** A chord as typed, in its key. `rest` is the part of the text left out of it, usually empty. */
export interface ReadChord {
  readonly chord: Chord;
  readonly rest: string;
  /** Of a small letter read as a minor chord, the same with a large one; null of all others. */
  readonly large: string | null;
}

/** What may be left off the end of a symbol without changing what the chord is: additions, alterations, omissions. */
const ADDITION = /[(\s,]*(?:add|omit|no|sus|[#b]{1,2}|[+-])?(?:\d{1,2}|alt|sus)[)\s,]*$/;

const sameChord = (a: Chord, b: Chord): boolean =>
  a.symbol === b.symbol && a.tones.every((tone, i) => tone.name === b.tones[i]?.name);

/** The numeral that keeps the root's letter: Gb7 in C is `bV7`, where the usual numeral would be `#IV7`. */
const literalRoman = (chord: Chord, tonic: NoteName, usual: string): string | null => {
  const degree = chord.root === pitchClassOf(tonic) ? '1' : degreeBetween(tonic, chord.rootName);
  const [, sign = '', number = ''] = /^([#b]*)(\d)$/.exec(degree) ?? [];
  const plain = NUMERALS[Number(number) - 1];
  const [, numeral = '', suffix = ''] = /^[#b]*([IViv]+)(.*)$/.exec(usual) ?? [];
  if (plain === undefined || degree === 'b1') return null;
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
  if (literal !== null && sameChord(literal, chord)) return literal;
  return romanChord(romanOf(usual, tonic), tonic);
};

/** Numerals drop their brackets: nothing before a numeral can be mistaken for what they hold. */
const plainNumeral = (text: string): string =>
  plainSigns(text).replace(/[(),]/g, '').replace(/Δ7?/g, 'maj7').replace(/ø7/g, 'ø');

/** Dominants and diminished chords lead to another degree, so a degree after their slash is where they lead. */
const leads = (numeral: string, { quality }: Chord): boolean =>
  /^dim|^m\d+b5/.test(quality) || (/^[#b]*V(?!I)/.test(numeral) && !/^(?:m|maj|6|sus)/.test(quality));

/** A chord over or towards another degree: `V7/ii` is the dominant of the two chord, `IV/V` the four over its note. */
const readOverDegree = (plain: string, tonic: NoteName): Chord | null => {
  const [, numeral = '', target = ''] = /^(.+)\/([#b]*[IViv]+)$/.exec(plain) ?? [];
  const aim = readRomanChord(target, tonic);
  const chord = readRomanChord(numeral, tonic, { sevenths: true });
  if (aim === null || chord === null) return null;
  if (leads(numeral, chord)) return readRomanChord(numeral, aim.rootName, { sevenths: true });
  return chord.bass === chord.root ? withBass(chord, aim.rootName) : null;
};

/** The same chord over another bass. */
export const withBass = ({ rootName: root, quality }: Chord, bass: NoteName): Chord =>
  chordOf({ root, quality, bass });

/** Numbers with a stroke between them that are meters. */
const METER = /^(?:[2-7]\/4|[36]\/8)$/;

/** A degree as a number (`4`, `6m`, `b7`, `1/3`): as the numeral of the same place reads, over a degree of the key. */
const readNumber = (plain: string, tonic: NoteName): Chord | null => {
  const [, sign = '', digit, suffix = '', bass] =
    /^([#b]?)([1-7])([^/]*)(?:\/([#b]?[1-7]))?$/.exec(plain) ?? [];
  if (digit === undefined || METER.test(plain)) return null;
  const chord = readRomanChord(`${sign}${NUMERALS[Number(digit) - 1]}${suffix}`, tonic, { sevenths: true });
  if (chord === null || bass === undefined) return chord;
  return withBass(chord, withoutDoubleAccidental(toneOf(tonic, bass === '1' ? 'R' : bass).name));
};

const readWhole = (text: string, tonic: NoteName): Chord | null => {
  if (/^\(*[A-G]/.test(text)) return readSymbol(text);
  const plain = plainNumeral(text);
  return (
    readRomanChord(plain, tonic, { sevenths: true }) ??
    readOverDegree(plain, tonic) ??
    readNumber(plain, tonic)
  );
};

/** A small letter but b, which may be a flat, and what follows; a word that names its own kind stays that kind. */
const SMALL = /^([ac-g])([#b]?)(?:m(?!aj|a7)|-)?(.*)$/;
const OWN_KIND = /^(?:o|°|ø|dim|h|aug|\+|sus|5|maj|M|m)/;

/** A symbol with a small letter, as a minor chord: the custom of places that write minor keys small. */
const readSmall = (text: string, tonic: NoteName): ReadChord | null => {
  const [, letter, sign = '', rest = ''] = SMALL.exec(plainSigns(text)) ?? [];
  if (letter === undefined) return null;
  const root = letter.toUpperCase() + sign;
  const chord = readSymbol(OWN_KIND.test(rest) ? root + rest : `${root}m${rest}`);
  return chord && { chord: chordInKey(chord, tonic), rest: '', large: root + rest };
};

/** A symbol up to its root or, where there is one, its bass: a sign right behind that letter begins no addition. */
const NAMED = /^(?:.*\/|\(*)[A-G](?:#{1,2}|b{1,2})?/;

/** Longer than any chord; keeps what is pasted by mistake from being tried in every way. */
const LONGEST_CHORD = 40;

/** So many additions are left off before a word is given up: more are no chord's. */
const MOST_TRIMMED = 5;

/** Leaves additions off the end, one by one, until a chord is known. */
const readTrimmed = (text: string, tonic: NoteName): ReadChord | null => {
  const whole = withoutOuterBrackets(plainSigns(text));
  const [, bass = ''] = /(\/[A-G][#b]{0,2})$/.exec(whole) ?? [];
  let known = whole.slice(0, whole.length - bass.length);
  const [named = ''] = NAMED.exec(known) ?? [];
  for (let left = MOST_TRIMMED; left > 0 && ADDITION.test(known.slice(named.length)); left -= 1) {
    known = named + known.slice(named.length).replace(ADDITION, '');
    const chord = readWhole(known + bass, tonic);
    const rest = whole.slice(known.length, whole.length - bass.length);
    if (chord !== null) return { chord, rest: rest.replace(/[()]/g, ''), large: null };
  }
  return null;
};

/**
 * Reads one chord as musicians write it: a symbol (`Bb7`, `F#ø7`, `C△7/E`, `C7(b9, 13)`) or a numeral in the key
 * (`IV7`, `#ivo7`, `V7/ii`; plain numerals are sevenths, as in the built-in forms, and `Imaj` is a triad) or the same
 * as a number (`4`, `6m`, `5/7`). A small letter is a minor chord, with a remark. Of a symbol with unknown additions
 * the known part is read. Null when it is no chord. Never throws on any text.
 */
export const readChord = (text: string, tonic: NoteName): ReadChord | null => {
  if (text.length > LONGEST_CHORD) return null;
  const whole = readWhole(text, tonic);
  const read = whole === null ? readTrimmed(text, tonic) : { chord: whole, rest: '', large: null };
  return read === null ? readSmall(text, tonic) : { ...read, chord: chordInKey(read.chord, tonic) };
};

/** Notes as they are called from fixed do, by their English letters. */
const DO_LETTERS: Readonly<Record<string, string>> = {
  Do: 'C',
  Re: 'D',
  Mi: 'E',
  Fa: 'F',
  Sol: 'G',
  La: 'A',
  Si: 'B',
};
const DO_NAME = /^(?:Do|Re|Mi|Fa|Sol|La|Si)/;

/** A spelling close to the text that is a chord, for "did you mean"; null when none is likely. */
export const likelyChord = (text: string): string | null => {
  if (text.length > LONGEST_CHORD) return null;
  const capital = (text.charAt(0).toUpperCase() + text.slice(1)).replace(
    /\/([a-g])(?=[#b♯♭]?$)/,
    (_, bass: string) => `/${bass.toUpperCase()}`,
  );
  const english = capital.replace(DO_NAME, (name) => DO_LETTERS[name] ?? name);
  const tries = [
    capital,
    capital.replace(/^H/, 'B'),
    english,
    capital.replace(/[^A-Ga-z0-9#b♯♭°ø△Δ+/-]/g, ''),
  ];
  return tries.find((each) => each !== text && !/[xX]/.test(each) && readSymbol(each) !== null) ?? null;
};
