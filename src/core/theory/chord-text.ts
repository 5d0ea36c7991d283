import type { NoteName } from './chord';

/** A sign before or after a letter, empty for none. */
export type AccidentalGlyph = '' | '♯' | '♭' | '𝄪' | '𝄫';

/** A note name in parts for typesetting: `♭7` and `Sol` are letters too. */
export interface NameParts {
  readonly letter: string;
  readonly accidental: AccidentalGlyph;
}

/** A chord symbol in parts for typesetting: the quality is usually set smaller and raised. */
export interface SymbolParts {
  readonly root: string;
  readonly accidental: AccidentalGlyph;
  /** With glyphs: `7`, `m7`, `ø7`, `°7`, `△7`, `7♭9`. */
  readonly quality: string;
  readonly bass: NameParts | null;
}

const ACCIDENTALS: Readonly<Record<string, AccidentalGlyph>> = {
  '': '',
  '#': '♯',
  b: '♭',
  '##': '𝄪',
  bb: '𝄫',
};

/** Splits a spelled note into letter and accidental glyph. Throws RangeError when it is no note name. */
export const prettyParts = (name: NoteName): NameParts => {
  const accidental = ACCIDENTALS[name.slice(1)];
  if (accidental === undefined || !/^[A-G]/.test(name)) throw new RangeError(`Not a note name: "${name}"`);
  return { letter: name.charAt(0), accidental };
};

/** Trade glyphs for qualities: triangle for the major seventh, circle diminished, slashed circle half-diminished. */
const QUALITY_GLYPHS: readonly (readonly [RegExp, string])[] = [
  [/^m7b5$/, 'ø7'],
  [/^dim/, '°'],
  [/^aug$/, '+'],
  [/maj(?=\d)/i, '△'],
  [/#/g, '♯'],
  [/b(?=\d)/g, '♭'],
];

/** A chord quality with proper glyphs: `m7b5` → `ø7`, `7b9` → `7♭9`. */
export const prettyQuality = (quality: string): string =>
  QUALITY_GLYPHS.reduce((text, [from, to]) => text.replace(from, to), quality);
