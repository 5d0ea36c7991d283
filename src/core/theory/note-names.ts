import type { Chord, NoteName } from './chord';
import { type NameParts, prettyParts, prettyQuality, type SymbolParts } from './chord-text';
import { numberParts } from './key-numbers';

/** How notes are called: by English letters, with H for B and B for B flat, from fixed do, or by number in the key. */
export const NOTE_SYSTEMS = ['english', 'german', 'do', 'numbers'] as const;
export type NoteSystem = (typeof NOTE_SYSTEMS)[number];

/**
 * What notes are called on the page. Names inside the program, in what is typed and in files, are English in ASCII;
 * whatever is shown or said goes through one of these.
 */
export interface NoteNames {
  readonly system: NoteSystem;
  /** A note without octave: `Bb` is `B♭`, `B`, `Si♭` or, in C, `♭7`. */
  readonly note: (name: NoteName) => string;
  /** The same in parts for typesetting. */
  readonly parts: (name: NoteName) => NameParts;
  /** A note with its octave, from `spelledPitch`: `Bb4`. Middle C has 4 in every system (numbers set it low: `♭7₄`). */
  readonly pitch: (name: string) => string;
  /** A key or a harp, alone or in words: `Bb`, `C minor`, `Low F harp`. Numbers count from a key and so leave it its letter. */
  readonly key: (words: string) => string;
  /** A chord symbol as one line of text: `C♯ø7`, `B♭7/D`. A number keeps the figures after it raised: `5⁷`. */
  readonly chord: (chord: Chord) => string;
  /** A chord symbol in parts for typesetting. */
  readonly symbol: (chord: Chord) => SymbolParts;
  /**
   * A sentence of core with notes, chords, harps and degrees in it, ASCII or with glyphs. Not for what a player has
   * named: an A that stands alone is a note.
   */
  readonly text: (sentence: string) => string;
}

/** Letters under other names (for sources see the tests). */
const LETTERS: Readonly<Record<'german' | 'do', Readonly<Record<string, string>>>> = {
  german: { B: 'H' },
  do: { C: 'Do', D: 'Re', E: 'Mi', F: 'Fa', G: 'Sol', A: 'La', B: 'Si' },
};

const lettered =
  (system: 'english' | 'german' | 'do') =>
  (name: NoteName): NameParts => {
    if (system === 'english') return prettyParts(name);
    if (system === 'german' && name === 'Bb') return { letter: 'B', accidental: '' };
    const { letter, accidental } = prettyParts(name);
    return { letter: LETTERS[system][letter] ?? letter, accidental };
  };

/**
 * Where a sentence names a note, alone or as the root of a chord, with an article before it: a letter of its own, not
 * the beginning of a word, and not that of a hole in tab (`4B`).
 */
const NAMED =
  /(?:\b(an?) )?(?<![A-Za-z\d])([A-G])(##?|bb?|[♯♭𝄪𝄫])?(?=$|[^A-Za-z#b♯♭𝄪𝄫]|m(?![a-z])|[Mm]aj|min|dim|aug|sus|add|no\d|M\d)(\d*)( harp)?/gu;
const DEGREE = /(##|#|bb|b)(?=[1-9]|[ivIV])/g;
const ASCII: Readonly<Record<string, string>> = { '♯': '#', '♭': 'b', '𝄪': '##', '𝄫': 'bb' };
const GLYPHS: Readonly<Record<string, string>> = { '##': '𝄪', '#': '♯', bb: '𝄫', b: '♭' };

/** A degree or numeral with proper accidentals: `b7` → `♭7`, `bVI7` → `♭VI7`. */
export const degreeText = (degree: string): string => degree.replace(DEGREE, (sign) => GLYPHS[sign] ?? sign);

const raised = (figures: string): string =>
  figures.replace(/\d/g, (figure) => '⁰¹²³⁴⁵⁶⁷⁸⁹'.charAt(Number(figure)));
const lowered = (figures: string): string =>
  figures.replace(/\d/g, (figure) => '₀₁₂₃₄₅₆₇₈₉'.charAt(Number(figure)));

/** Letters whose names begin with a vowel when they are read aloud. */
const AN = /^[AEFH]([♯♭]|$)/;

const joined = ({ letter, accidental }: NameParts): string => letter + accidental;

const makeNames = (system: NoteSystem, tonic: NoteName): NoteNames => {
  const counts = system === 'numbers';
  const ofKey = lettered(counts ? 'english' : system);
  const parts = counts ? (name: NoteName) => numberParts(name, tonic) : ofKey;
  const note = (name: NoteName): string => joined(parts(name));
  const symbol = (chord: Chord): SymbolParts => {
    const { letter, accidental } = parts(chord.rootName);
    const bass = /\/([A-G][#b]*)$/.exec(chord.symbol)?.[1];
    const quality = prettyQuality(chord.quality);
    return { root: letter, accidental, quality, bass: bass === undefined ? null : parts(bass) };
  };
  const renamed = (sentence: string, other: typeof parts): string =>
    degreeText(
      sentence.replace(NAMED, (...found: (string | undefined)[]) => {
        const [, article, letter = '', sign = '', figures = '', harp = ''] = found;
        const name = joined((harp === '' ? other : ofKey)(letter + (ASCII[sign] ?? sign)));
        const before = article === undefined ? '' : `${AN.test(name) ? 'an' : 'a'} `;
        return before + name + (counts && other === parts ? raised(figures) : figures) + harp;
      }),
    );
  return {
    system,
    note,
    parts,
    symbol,
    pitch: (name) => {
      const [, letter = '', octave = ''] = /^(\D+?)(-?\d+)$/.exec(name) ?? [];
      return note(letter) + (counts ? lowered(octave) : octave);
    },
    key: (words) => renamed(words, ofKey),
    chord: (chord) => {
      const { root, accidental, quality, bass } = symbol(chord);
      const figures = counts ? quality.replace(/^\d+/, raised) : quality;
      return root + accidental + figures + (bass === null ? '' : `/${joined(bass)}`);
    },
    text: (sentence) => renamed(sentence, parts),
  };
};

/** Names made before: there are few, and whoever compares them asks for the same again. */
const made = new Map<string, NoteNames>();

/**
 * The names of a system, the same value each time.
 * @param tonic what numbers count from: the spelled tonic of the key.
 */
export const noteNames = (system: NoteSystem, tonic: NoteName = 'C'): NoteNames => {
  const id = system === 'numbers' ? `${system} ${tonic}` : system;
  const names = made.get(id) ?? makeNames(system, tonic);
  made.set(id, names);
  return names;
};

/** English names: what the program itself and standard files call notes. */
export const ENGLISH = noteNames('english');
