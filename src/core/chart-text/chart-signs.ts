import type { TextSpan } from './chart-problems';

/**
 * What stands in a chart beside bars and bar lines, told by its shape: lines that say something of the whole
 * (`Key: G`), names of sections (`[A]`, `Verse:`), endings (`[1`), the number of times after a repeat (`x3`), and
 * the signs of the road (D.C., D.S., Segno, Coda, Fine).
 */

/** A word of the text, with its place in the whole. */
export interface Word extends TextSpan {
  /** From the start of the source, in UTF-16 units. */
  readonly offset: number;
}

/** What a line with a colon can say. */
const HEADER_NAMES = ['title', 'key', 'meter', 'feel', 'tempo', 'order', 'pick-up'] as const;
export type HeaderName = (typeof HEADER_NAMES)[number];

/** The signs that lead through a chart by another way than onwards. */
export type RoadSign =
  | { readonly sign: 'segno' | 'coda' | 'fine' | 'to coda' | 'fermata' }
  | { readonly sign: 'da capo' | 'dal segno'; readonly until: 'fine' | 'coda' | null };

/** One thing that stands in a chart and is no bar. */
export type ChartSign =
  | { readonly kind: 'header'; readonly name: HeaderName; readonly span: TextSpan; readonly value: Word }
  | { readonly kind: 'label'; readonly name: string; readonly span: TextSpan }
  | { readonly kind: 'ending'; readonly numbers: readonly number[]; readonly span: TextSpan }
  | { readonly kind: 'times'; readonly times: number; readonly span: TextSpan }
  | { readonly kind: 'road'; readonly road: RoadSign; readonly span: TextSpan };

const HEADER =
  /^[ \t]*(title|key|met(?:er|re)|time|feel|tempo|order|play|pick-?up|upbeat)[ \t]*:(?![|:])[ \t]*/i;
const LABEL_LINE = /^[ \t]*(\p{L}[\p{L}\p{N} '’.-]{0,31}?)[ \t]*:(?![|:‖𝄂])/u;
const LABEL_BOX = /^\[([^\][|]{1,32})\]/;
/** In a box such a text is a chord and no name: a letter alone names a section. */
const CHORD_SHAPE = /^[A-G](?:[#b♯♭]|m(?![a-z]{2})|maj|M|dim|aug|sus|\d|[-+°øΔ△/])/;
/** Longer than the longest box. */
const LONGEST_BOX = 40;

const isSectionName = (name: string): boolean => /\p{L}/u.test(name) && !CHORD_SHAPE.test(name);

const ENDING_BOX = /^\[(\d+(?:\s*[,–-]\s*\d+)*)[.\]]?(?![\d\p{L}])/u;
const ENDING_BARE = /^(\d+(?:[,–-]\d+)*)(?:\.\s*|\s+)(?=[A-G(]|N\.?C)/;
const TIMES = /^\(?(?:[x×]\s?(\d{1,3})|(\d{1,3})\s?(?:[x×]|times\b))\)?(?![\p{L}\p{N}])/iu;

const HEADERS: Readonly<Record<string, HeaderName>> = {
  metre: 'meter',
  time: 'meter',
  play: 'order',
  pickup: 'pick-up',
  upbeat: 'pick-up',
};

/** The longest way first: `D.C. al Fine` is more than `D.C.`. */
const ROADS: readonly (readonly [string, RoadSign['sign'], 'fine' | 'coda' | null])[] = [
  ['(?:d\\.c\\.?|dc|da capo)\\s+al\\s+fine\\.?', 'da capo', 'fine'],
  ['(?:d\\.c\\.?|dc|da capo)\\s+al\\s+(?:coda\\.?|𝄌)', 'da capo', 'coda'],
  ['(?:d\\.s\\.?|ds|dal segno)\\s+al\\s+fine\\.?', 'dal segno', 'fine'],
  ['(?:d\\.s\\.?|ds|dal segno)\\s+al\\s+(?:coda\\.?|𝄌)', 'dal segno', 'coda'],
  ['d\\.c\\.?|dc|da capo', 'da capo', null],
  ['d\\.s\\.?|ds|dal segno', 'dal segno', null],
  ['to\\s+(?:coda|𝄌)', 'to coda', null],
  ['fine\\.?', 'fine', null],
  ['segno|𝄋', 'segno', null],
  ['coda|𝄌', 'coda', null],
  ['fermata|𝄐', 'fermata', null],
];

const HEADS = ROADS.map(([text, sign, until]) => ({
  shape: new RegExp(`^(?:${text})(?![\\p{L}\\p{N}])(?:\\s*:(?![|:]))?`, 'iu'),
  sign,
  until,
}));
const TAILS = ROADS.map(([text, sign, until]) => ({
  // A glyph may stand right behind a chord, a word may not.
  shape: new RegExp(`(?:(?<![\\p{L}\\p{N}.])|(?=[𝄋𝄌𝄐]))(?:${text})$`, 'iu'),
  sign,
  until,
}));

const roadOf = (sign: RoadSign['sign'], until: 'fine' | 'coda' | null): RoadSign =>
  sign === 'da capo' || sign === 'dal segno' ? { sign, until } : { sign };

/** Longer lists than any ending has are cut, so that `1-999999` costs nothing. */
const MOST_ENDINGS = 16;

/** `1,3` and `1-3` as numbers from 1. */
const numbersOf = (text: string): readonly number[] =>
  text
    .split(',')
    .flatMap((part) => {
      const [from = 0, to = from] = part.split(/[–-]/).map(Number);
      const count = Math.min(Math.max(to - from + 1, 1), MOST_ENDINGS);
      return Array.from({ length: count }, (_, i) => from + i);
    })
    .filter((number) => number >= 1)
    .slice(0, MOST_ENDINGS);

/** A sign at the beginning of a text: how much of it, blanks before it included, and what it is. */
export interface SignFound {
  readonly used: number;
  readonly sign: ChartSign;
}

/** A line that says something of the chart, or the name of a section with a colon at its beginning; null otherwise. */
export const lineSign = (text: string, line: number, offset: number): SignFound | null => {
  const header = HEADER.exec(text);
  const at = text.length - text.trimStart().length;
  if (header !== null) {
    const word = (header[1] ?? '').toLowerCase();
    const name = HEADER_NAMES.find((each) => each === (HEADERS[word] ?? word));
    if (name === undefined) return null;
    const value = text.slice(header[0].length).trimEnd();
    return {
      used: text.length,
      sign: {
        kind: 'header',
        name,
        span: { line, column: at + 1, text: text.trim() },
        value: { line, column: header[0].length + 1, text: value, offset: offset + header[0].length },
      },
    };
  }
  const label = LABEL_LINE.exec(text);
  const name = label?.[1]?.trim();
  if (label === null || name === undefined || CHORD_SHAPE.test(name)) return null;
  const span = { line, column: at + 1, text: label[0].trim() };
  return { used: label[0].length, sign: { kind: 'label', name, span } };
};

/** Where, behind its first character, an ending or the name of a section stands in a piece; -1 where none does. */
export const nextBox = (text: string): number => {
  const first = text.length - text.trimStart().length;
  for (let at = text.indexOf('[', first + 1); at !== -1; at = text.indexOf('[', at + 1)) {
    const rest = text.slice(at, at + LONGEST_BOX);
    const name = LABEL_BOX.exec(rest)?.[1]?.trim() ?? '';
    if (ENDING_BOX.test(rest) || isSectionName(name)) return at;
  }
  return -1;
};

/** Where a piece of a line stands, and what stands before it. */
export interface SignPlace {
  readonly line: number;
  readonly column: number;
  /** A repeat ends right before it. */
  readonly closes: boolean;
  /** A bar line stands right before it, with no blank between. */
  readonly glued: boolean;
}

const headSign = (text: string, { line, column, closes, glued }: SignPlace): SignFound | null => {
  const spanOf = (length: number): TextSpan => ({ line, column, text: text.slice(0, length).trimEnd() });
  const times = closes ? TIMES.exec(text) : null;
  if (times !== null) {
    const count = Number(times[1] ?? times[2]);
    return { used: times[0].length, sign: { kind: 'times', times: count, span: spanOf(times[0].length) } };
  }
  const ending = ENDING_BOX.exec(text) ?? (glued ? ENDING_BARE.exec(text) : null);
  const numbers = ending === null ? [] : numbersOf(ending[1] ?? '');
  if (ending !== null && numbers.length > 0) {
    return { used: ending[0].length, sign: { kind: 'ending', numbers, span: spanOf(ending[0].length) } };
  }
  const box = LABEL_BOX.exec(text);
  const name = box?.[1]?.trim() ?? '';
  if (box !== null && isSectionName(name)) {
    return { used: box[0].length, sign: { kind: 'label', name, span: spanOf(box[0].length) } };
  }
  for (const { shape, sign, until } of HEADS) {
    const [found] = shape.exec(text) ?? [];
    if (found === undefined) continue;
    return {
      used: found.length,
      sign: { kind: 'road', road: roadOf(sign, until), span: spanOf(found.length) },
    };
  }
  return null;
};

/** A piece of a line with the signs at its two ends taken off. */
export interface Stripped {
  readonly before: readonly ChartSign[];
  /** What is left, blanks included, and how far into the piece it begins. */
  readonly text: string;
  readonly from: number;
  readonly after: readonly ChartSign[];
}

/** No bar has more signs at either end; what is pasted by mistake is not searched for ever. */
const MOST_SIGNS = 8;

/** Takes the signs off the two ends of what stands between bar lines. */
export const stripSigns = (raw: string, place: SignPlace): Stripped => {
  const before: ChartSign[] = [];
  const after: ChartSign[] = [];
  let from = 0;
  let to = raw.length;
  let { closes, glued } = place;
  while (before.length < MOST_SIGNS) {
    const blanks = raw.slice(from, to).length - raw.slice(from, to).trimStart().length;
    const at = from + blanks;
    const here = { line: place.line, column: place.column + at, closes, glued: glued && blanks === 0 };
    const found = at < to ? headSign(raw.slice(at, to), here) : null;
    if (found === null) break;
    before.push(found.sign);
    from = at + found.used;
    closes = false;
    glued = true;
  }
  while (after.length < MOST_SIGNS) {
    const text = raw.slice(from, to).trimEnd();
    const tail = TAILS.map((each) => ({ ...each, found: each.shape.exec(text) })).find(
      ({ found }) => found !== null,
    );
    if (text === '' || !tail?.found) break;
    const span = { line: place.line, column: place.column + from + tail.found.index, text: tail.found[0] };
    after.unshift({ kind: 'road', road: roadOf(tail.sign, tail.until), span });
    to = from + tail.found.index;
  }
  return { before, text: raw.slice(from, to), from, after };
};
