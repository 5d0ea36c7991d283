import type { TextSpan } from './chart-problems';

/**
 * Reads in which order sections are played: their names in words or letters, with or without commas, each with a
 * count, and brackets around what is played more than once: `A A B A`, `Intro, then A three times`, `(A B) x2`.
 */

/** More sections than any tune has; keeps nested counts from growing without end. */
export const LONGEST_ORDER = 128;

const COUNTS = ['once', 'twice', 'thrice'];
const NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
/** Words between names that say nothing of their own. */
const FILLERS = new Set(['then', 'and', 'to', 'last', 'finally', 'times', 'time', 'of']);

/** The sections in the order they are played, and words that name none. */
export interface SectionOrder {
  readonly names: readonly string[];
  readonly unknown: readonly TextSpan[];
}

interface Token {
  readonly text: string;
  readonly at: number;
}

/** Names with a count right behind them are parted, unless a section is called so. */
const tokensOf = (text: string, names: readonly string[]): readonly Token[] => {
  const known = names
    .toSorted((a, b) => b.length - a.length)
    .filter((name) => name !== '')
    .map((name) => `(?<![\\p{L}\\p{N}])${name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?!\\p{L})`);
  const shape = new RegExp(
    `(?:${[...known, '[()]', '[x×]?\\d{1,3}[x×]?', "[\\p{L}\\p{N}#♯♭’'-]+", '[^\\s\\p{L}\\p{N},;.()]+'].join('|')})`,
    'giu',
  );
  return [...text.matchAll(shape)].map((match) => ({ text: match[0], at: match.index }));
};

/** How often, where a word says that; null otherwise. */
const countOf = (text: string): number | null => {
  const [, digits] = /^[x×]?(\d{1,3})[x×]?$/i.exec(text) ?? [];
  if (digits !== undefined) return Number(digits);
  const word = text.toLowerCase();
  if (COUNTS.includes(word)) return COUNTS.indexOf(word) + 1;
  return NUMBERS.includes(word) ? NUMBERS.indexOf(word) + 1 : null;
};

const repeated = (names: readonly string[], times: number): readonly string[] =>
  Array.from({ length: Math.min(Math.max(times, 1), LONGEST_ORDER) }, () => names)
    .flat()
    .slice(0, LONGEST_ORDER);

/** A word of names that stand together, with counts behind them: `AABA`, `A2B`; null where it holds anything else. */
const packed = (text: string, names: readonly string[]): readonly string[] | null => {
  const parts = text.match(/\p{L}|\d+/gu) ?? [];
  const isKnown = (part: string): boolean => countOf(part) !== null || names.includes(part);
  return parts.join('') === text && parts.every(isKnown) ? parts : null;
};

/** What is played, level by level of brackets: each a list of groups, of which a count repeats the last. */
type Levels = string[][][];

const closeLevel = (levels: Levels): void => {
  const inner = levels.pop() ?? [];
  levels.at(-1)?.push(inner.flat().slice(0, LONGEST_ORDER));
};

/** Takes one word into the order; false where it is none that an order holds. */
const takeWord = (levels: Levels, text: string, names: readonly string[]): boolean => {
  const name = names.find((each) => each.toLowerCase() === text.toLowerCase());
  const count = countOf(text);
  if (name !== undefined) levels.at(-1)?.push([name]);
  else if (text === '(') levels.push([]);
  else if (text === ')') {
    if (levels.length > 1) closeLevel(levels);
  } else if (count !== null) {
    const last = levels.at(-1)?.pop();
    if (last !== undefined) levels.at(-1)?.push([...repeated(last, count)]);
  } else return FILLERS.has(text.toLowerCase());
  return true;
};

/** Reads an order against the names of the sections there are, small and large letters alike. Never throws. */
export const readOrder = (value: TextSpan, names: readonly string[]): SectionOrder => {
  const unknown: TextSpan[] = [];
  const levels: Levels = [[]];
  for (const { text, at } of tokensOf(value.text, names)) {
    if (takeWord(levels, text, names)) continue;
    const parts = packed(text, names);
    for (const part of parts ?? []) takeWord(levels, part, names);
    if (parts === null) unknown.push({ line: value.line, column: value.column + at, text });
  }
  while (levels.length > 1) closeLevel(levels);
  return { names: (levels[0] ?? []).flat().slice(0, LONGEST_ORDER), unknown };
};
