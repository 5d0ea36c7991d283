import type { Chord, NoteName } from './chord';
import { type NameParts, prettyParts, prettyQuality, type SymbolParts } from './chord-text';

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

/**
 * Where a sentence names a note, alone or as the root of a chord, with an article before it: a letter of its own, not
 * the beginning of a word, not that of a hole in tab (`4B`), and not a name in quotes.
 */
const NAMED =
  /(?:\b(an?) )?(?<![A-Za-z\d“])([A-G])(##?|bb?|[♯♭𝄪𝄫])?(?=$|[^A-Za-z#b♯♭𝄪𝄫]|m(?![a-z])|[Mm]aj|min|dim|aug|sus|add|no\d|M\d)(\d*)( harp)?/gu;
const DEGREE = /(##|#|bb|b)(?=[1-9]|[ivIV])/g;
const ASCII: Readonly<Record<string, string>> = { '♯': '#', '♭': 'b', '𝄪': '##', '𝄫': 'bb' };
const GLYPHS: Readonly<Record<string, string>> = { '##': '𝄪', '#': '♯', bb: '𝄫', b: '♭' };

/** A degree or numeral with proper accidentals: `b7` → `♭7`, `bVI7` → `♭VI7`. */
export const degreeText = (degree: string): string => degree.replace(DEGREE, (sign) => GLYPHS[sign] ?? sign);

/** Letters whose names begin with a vowel when they are read aloud. */
const AN = /^[AEFH]([♯♭]|$)/;

const joined = ({ letter, accidental }: NameParts): string => letter + accidental;

/** What makes a system of names. */
export interface NameMaker {
  readonly system: NoteSystem;
  /** A note in parts. */
  readonly parts: (name: NoteName) => NameParts;
  /** A key or harp in parts. */
  readonly keyParts: (name: NoteName) => NameParts;
  /** The octave behind a name. */
  readonly octave: (figures: string) => string;
  /** The figures of a chord behind its root. */
  readonly figures: (figures: string) => string;
}

/** The names that a maker makes. */
export const namesBy = ({ system, parts, keyParts, octave, figures }: NameMaker): NoteNames => {
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
        const [, article, letter = '', sign = '', behind = '', harp = ''] = found;
        const name = joined((harp === '' ? other : keyParts)(letter + (ASCII[sign] ?? sign)));
        const before = article === undefined ? '' : `${AN.test(name) ? 'an' : 'a'} `;
        return before + name + (other === parts ? figures(behind) : behind) + harp;
      }),
    );
  return {
    system,
    note,
    parts,
    symbol,
    pitch: (name) => {
      const [, letter = '', behind = ''] = /^(\D+?)(-?\d+)$/.exec(name) ?? [];
      return note(letter) + octave(behind);
    },
    key: (words) => renamed(words, keyParts),
    chord: (chord) => {
      const { root, accidental, quality, bass } = symbol(chord);
      const kind = quality.replace(/^\d+/, figures);
      return root + accidental + kind + (bass === null ? '' : `/${joined(bass)}`);
    },
    text: (sentence) => renamed(sentence, parts),
  };
};

const same = (figures: string): string => figures;

/** How English letters make names. */
export const BY_LETTERS = {
  parts: prettyParts,
  keyParts: prettyParts,
  octave: same,
  figures: same,
} as const satisfies Omit<NameMaker, 'system'>;

/** English names: what the program itself and standard files call notes. */
export const ENGLISH = namesBy({ system: 'english', ...BY_LETTERS });
