import type { NoteName } from './chord';

/** A chord symbol cut apart, in ASCII except for △, ø and °. */
export interface WrittenSymbol {
  readonly root: NoteName;
  /** Everything between root and bass, brackets included: they keep a sign off the root. */
  readonly quality: string;
  readonly bass: NoteName | null;
}

/** Glyphs and look-alikes of one sign. */
const GLYPHS: readonly (readonly [RegExp, string])[] = [
  [/\s/g, ''],
  [/♭/g, 'b'],
  [/♯/g, '#'],
  [/𝄫/gu, 'bb'],
  [/𝄪/gu, '##'],
  [/[−–‑]/g, '-'],
  [/[△∆]/g, 'Δ'],
  [/Ø/g, 'ø'],
  [/[º˚]/g, '°'],
];

/** The same text with one sign for each meaning and no blanks: `B♭△7` → `BbΔ7`. */
export const plainSigns = (text: string): string =>
  GLYPHS.reduce((each, [from, to]) => each.replace(from, to), text);

const countOf = (text: string, sign: string): number => text.split(sign).length - 1;

/** Brackets around a whole chord, or around several of which this is one, are no part of it. */
export const withoutOuterBrackets = (text: string): string => {
  let inner = text.replace(/^\(+/, '');
  while (inner.endsWith(')') && countOf(inner, ')') > countOf(inner, '(')) inner = inner.slice(0, -1);
  return inner;
};

/** Longer than any chord; keeps what is pasted by mistake from being taken apart. */
const LONGEST = 40;

const SYMBOL = /^([A-G](?:##|#|bb|b)?)(.*?)(?:\/[(,]*([A-G](?:##|#|bb|b)?)[),]*)?$/;

/** Root, quality and bass of a text that begins as a chord symbol does; null otherwise. The quality may be no chord's. */
export const symbolParts = (text: string): WrittenSymbol | null => {
  if (text.length > LONGEST) return null;
  const plain = withoutOuterBrackets(plainSigns(text));
  const [, root, quality = '', bass] = SYMBOL.exec(plain) ?? [];
  return root === undefined ? null : { root, quality, bass: bass ?? null };
};
