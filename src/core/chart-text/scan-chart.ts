import { type Problem, repeatEmpty, repeatOpen, type TextSpan } from './chart-problems';

/**
 * Cuts typed chart text into bars and the bars into words, and plays simple repeats out. Every character that is
 * neither blank, separator nor bar line ends up in the text of some bar.
 */

/** The longest text that is read as a chart, in UTF-16 units: many times what the longest chart takes. */
export const LONGEST_TEXT = 20_000;

/** A word of a bar: a chord, a sign, or something else. */
export interface Word extends TextSpan {
  /** From the start of the source, in UTF-16 units. */
  readonly offset: number;
}

/** A bar as typed; its text has no blanks at its ends. */
export interface WrittenBar extends TextSpan {
  readonly words: readonly Word[];
  /** True where no bar line stands on its line. */
  readonly isLine: boolean;
}

interface BarLine extends TextSpan {
  readonly opens: boolean;
  readonly closes: boolean;
}

/** Bars and bar lines of one source, in order. */
export type Item =
  | { readonly kind: 'bar'; readonly bar: WrittenBar }
  | { readonly kind: 'line'; readonly line: BarLine };

/** Runs of bar lines with repeat dots, and the signs of the Unicode block Musical Symbols. */
const BAR_LINE = /:?[|‖𝄀𝄁𝄂𝄃]+:?|𝄆|𝄇/gu;
const NEW_LINE = /\r\n|\r|\n/g;
/**
 * Words end at blanks, commas and semicolons, but not inside a bracket that belongs to a chord: `C7(b9, 13)` is one
 * word, and so is `C7 (b9)`, where only a sign can follow; `(Dm7 G7)` are two.
 */
const WORD =
  /(?:(?<=[^\s,;(])\([^()]*\)|(?<=[A-G\d#b♯♭m°ø△Δ])[ \t]+\([#b♯♭]\d{1,2}(?:[\s,]*[#b♯♭]?\d{1,2})*\)|[^\s,;])+/g;

const wordsOf = (text: string, place: Omit<Word, 'text'>): readonly Word[] =>
  [...text.matchAll(WORD)].map((match) => ({
    text: match[0],
    line: place.line,
    column: place.column + match.index,
    offset: place.offset + match.index,
  }));

/** Between bar lines, between one and the edge of its line, or the whole of a line. */
type Where = 'inside' | 'edge' | 'line';

/** The bar between two bar lines, or none where nothing stands between them, or only the edge of the text. */
const barOf = (raw: string, place: Omit<Word, 'text'>, where: Where): readonly Item[] => {
  const text = raw.trim();
  if (text === '' && !(where === 'inside' && raw !== '')) return [];
  const indent = text === '' ? 0 : raw.length - raw.trimStart().length;
  const { line, column, offset } = place;
  const start = { line, column: column + indent, offset: offset + indent };
  const bar = { text, line, column: start.column, words: wordsOf(text, start), isLine: where === 'line' };
  return [{ kind: 'bar', bar }];
};

const scanLine = (text: string, line: number, offset: number): readonly Item[] => {
  const items: Item[] = [];
  let from = 0;
  for (const match of text.matchAll(BAR_LINE)) {
    const sign = match[0];
    const before = { line, column: from + 1, offset: offset + from };
    items.push(...barOf(text.slice(from, match.index), before, from > 0 ? 'inside' : 'edge'));
    items.push({
      kind: 'line',
      line: {
        line,
        column: match.index + 1,
        text: sign,
        opens: sign.endsWith(':') || sign === '𝄆',
        closes: sign.startsWith(':') || sign === '𝄇',
      },
    });
    from = match.index + sign.length;
  }
  const after = { line, column: from + 1, offset: offset + from };
  return [...items, ...barOf(text.slice(from), after, items.length === 0 ? 'line' : 'edge')];
};

/** Bars and bar lines of a text, in order. A line's end ends a bar too. Never throws. */
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

/** Bars in the order they are played. */
export interface PlayedOut {
  readonly bars: readonly WrittenBar[];
  readonly problems: readonly Problem[];
}

/** Plays repeats out: each section between `|:` (or the last repeat's end, or the start) and `:|` sounds twice. */
export const playOut = (items: readonly Item[]): PlayedOut => {
  const bars: WrittenBar[] = [];
  const problems: Problem[] = [];
  let sectionStart = 0;
  let open: BarLine | null = null;
  for (const item of items) {
    if (item.kind === 'bar') {
      bars.push(item.bar);
      continue;
    }
    const { line } = item;
    if (line.closes) {
      if (sectionStart === bars.length) problems.push(repeatEmpty(line));
      for (const bar of bars.slice(sectionStart)) bars.push(bar);
      open = null;
    }
    if (line.opens && open !== null) problems.push(repeatOpen(open));
    if (line.closes || line.opens) sectionStart = bars.length;
    if (line.opens) open = line;
  }
  return { bars, problems: open === null ? problems : [...problems, repeatOpen(open)] };
};
