import type { TextSpan } from './chart-problems';
import { type ChartSign, lineSign, nextBox, stripSigns, type Word } from './chart-signs';

/**
 * Cuts typed chart text into bars, bar lines and signs, and the bars into words. Every character that is neither
 * blank, separator nor bar line ends up in the text of some bar or sign.
 */

/** The longest text that is read as a chart, in UTF-16 units: many times what the longest chart takes. */
export const LONGEST_TEXT = 20_000;

/** A bar as typed; its text has no blanks at its ends. */
export interface WrittenBar extends TextSpan {
  readonly words: readonly Word[];
  /** True where no bar line stands on its line. */
  readonly isLine: boolean;
}

/** A bar line; a double one ends what began before it. */
export interface BarLine extends TextSpan {
  readonly opens: boolean;
  readonly closes: boolean;
  readonly double: boolean;
}

/** Bars, bar lines and signs of one source, in order. */
export type Item =
  | { readonly kind: 'bar'; readonly bar: WrittenBar }
  | { readonly kind: 'line'; readonly line: BarLine }
  | ChartSign;

/** Runs of bar lines with repeat dots, and the signs of the Unicode block Musical Symbols. */
const BAR_LINE = /:?(?:\[(?=\|))?[|‖𝄀𝄁𝄂𝄃]+\]?:?|𝄆|𝄇/gu;
const NEW_LINE = /\r\n|\r|\n/g;
/**
 * Words end at blanks, commas and semicolons, but not inside a bracket that belongs to a chord: `C7(b9, 13)` is one
 * word, and so is `C7 (b9)`, where only a sign can follow; `(Dm7 G7)` are two.
 */
const WORD =
  /(?:(?<=[^\s,;(])\([^()]*\)|(?<=[A-G\d#b♯♭m°ø△Δ])[ \t]+\([#b♯♭]\d{1,2}(?:[\s,]*[#b♯♭]?\d{1,2})*\)|[^\s,;])+/g;

/** The words of a text at a place. */
export const wordsOf = (text: string, place: Omit<Word, 'text'>): readonly Word[] =>
  [...text.matchAll(WORD)].map((match) => ({
    text: match[0],
    line: place.line,
    column: place.column + match.index,
    offset: place.offset + match.index,
  }));

/** A piece of a line between two bar lines or the edges of the text. */
interface Piece extends Omit<Word, 'text'> {
  readonly raw: string;
  /** Between bar lines, between one and the edge of its line, or the whole of a line. */
  readonly where: 'inside' | 'edge' | 'line';
  readonly closes: boolean;
  readonly glued: boolean;
}

/** The signs of a piece and the bar between them, if anything or an empty bar is left. */
const itemsOf = ({ raw, where, ...place }: Piece): readonly Item[] => {
  const { before, text: left, from, after } = stripSigns(raw, place);
  const text = left.trim();
  const isEmpty = text === '' && (before.length + after.length > 0 || where !== 'inside' || raw === '');
  if (isEmpty) return [...before, ...after];
  const moved = from + (text === '' ? 0 : left.length - left.trimStart().length);
  const { line, column, offset } = place;
  const start = { line, column: column + moved, offset: offset + moved };
  const bar = { text, line, column: start.column, words: wordsOf(text, start), isLine: where === 'line' };
  return [...before, { kind: 'bar', bar }, ...after];
};

const lineOf = (sign: string, line: number, column: number): BarLine => ({
  line,
  column,
  text: sign,
  opens: sign.endsWith(':') || sign === '𝄆',
  closes: sign.startsWith(':') || sign === '𝄇',
  double: /[|]{2}|[‖𝄁𝄂]/u.test(sign),
});

const scanLine = (text: string, line: number, offset: number): readonly Item[] => {
  const head = lineSign(text, line, offset);
  const items: Item[] = head === null ? [] : [head.sign];
  const begins = head?.used ?? 0;
  let from = begins;
  let before: BarLine | null = null;
  const takePiece = (to: number, ends: boolean): void => {
    const [first, last] = [before === null, !ends];
    items.push(
      ...itemsOf({
        raw: text.slice(from, to),
        line,
        column: from + 1,
        offset: offset + from,
        where: first && last ? 'line' : first || last ? 'edge' : 'inside',
        closes: before?.closes ?? false,
        glued: before !== null,
      }),
    );
  };
  const take = (to: number, ends: boolean): void => {
    for (let box = nextBox(text.slice(from, to)); box > 0; box = nextBox(text.slice(from, to))) {
      takePiece(from + box, true);
      from += box;
    }
    takePiece(to, ends);
  };
  for (const match of text.matchAll(BAR_LINE)) {
    if (match.index < begins) continue;
    const next = lineOf(match[0], line, match.index + 1);
    const isOver = before !== null && (before.closes || before.double);
    // `:| |:`, `|| |:` and `:| ||` are one place, not a bar that is played again.
    if (!(isOver && (next.opens || next.double) && text.slice(from, match.index).trim() === ''))
      take(match.index, true);
    before = next;
    items.push({ kind: 'line', line: before });
    from = match.index + match[0].length;
  }
  take(text.length, false);
  return items;
};

/** Bars, bar lines and signs of a text, in order. A line's end ends a bar too. Never throws. */
export const scanChart = (source: string): readonly Item[] => {
  const items: Item[] = [];
  let from = 0;
  let line = 1;
  for (const match of source.matchAll(NEW_LINE)) {
    for (const item of scanLine(source.slice(from, match.index), line, from)) items.push(item);
    from = match.index + match[0].length;
    line += 1;
  }
  return [...items, ...scanLine(source.slice(from), line, from)];
};
