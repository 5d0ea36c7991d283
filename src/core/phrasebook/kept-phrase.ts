import { parsePhrase } from '../phrase/parse-phrase';
import type { Phrase } from '../phrase/phrase';
import { CALL_LEVELS, type CallLevel } from '../practice/call-levels';
import { isRecord } from '../theory/is-record';
import { keptTags } from '../theory/kept-tags';
import { keptText } from '../theory/kept-text';
import type { LibraryKind } from './library-file';

/** A phrase of the player's library. */
export interface KeptPhrase {
  readonly id: string;
  readonly name: string;
  readonly phrase: Phrase;
  /** The position it is meant for, 1–12: its holes move to any key in it. */
  readonly position: number;
  readonly level: CallLevel;
  readonly words: string;
  readonly tags: readonly string[];
  /** What it was before it was changed, the latest first. */
  readonly earlier: readonly Phrase[];
}

/** Bounds of what is kept with a phrase. */
export const PHRASE_LIMITS = { name: 60, words: 500, earlier: 8 } as const;

/** A phrase read from outside, and what had to be mended. */
export interface ParsedKeptPhrase {
  readonly item: KeptPhrase | null;
  readonly problems: readonly string[];
}

const isPosition = (value: unknown): value is number =>
  typeof value === 'number' && Number.isInteger(value) && value >= 1 && value <= 12;

/** What was given with a phrase and could not be kept as it was, in sentences. */
const repairsOf = (given: Readonly<Record<string, unknown>>, item: KeptPhrase): readonly string[] => {
  const { name, position, level, words, tags, earlier } = given;
  const few = Array.isArray(earlier) ? Math.min(earlier.length, PHRASE_LIMITS.earlier) : -1;
  const repairs: readonly (readonly [boolean, string])[] = [
    [keptText(name) === '', 'It had no name; give it one.'],
    [position !== undefined && position !== item.position, 'Its position could not be read; it is 2 now.'],
    [level !== undefined && level !== item.level, 'Its level could not be read; it is 2 now.'],
    [words !== undefined && typeof words !== 'string', 'Its words could not be read; it has none now.'],
    [tags !== undefined && !Array.isArray(tags), 'Its tags could not be read; it has none now.'],
    [
      earlier !== undefined && item.earlier.length !== few,
      'Some of its earlier versions could not be read and were left out.',
    ],
  ];
  return repairs.flatMap(([needed, sentence]) => (needed ? [sentence] : []));
};

/** Reads a phrase of the library from storage or a file. Never throws; what cannot be read is said, the rest kept. */
export const parseKeptPhrase = (value: unknown): ParsedKeptPhrase => {
  const nothing = 'One of the phrases could not be read and was left out.';
  if (!isRecord(value)) return { item: null, problems: [nothing] };
  const { phrase, mended } = parsePhrase(value.phrase);
  if (phrase === null || phrase.notes.length === 0) return { item: null, problems: [nothing] };
  const name = keptText(value.name, PHRASE_LIMITS.name) || 'Phrase without a name';
  const earlier: readonly unknown[] = Array.isArray(value.earlier) ? value.earlier : [];
  const level = CALL_LEVELS.find((each) => each === value.level);
  const item: KeptPhrase = {
    id: keptText(value.id, PHRASE_LIMITS.name) || keptText(`phrase ${name}`, PHRASE_LIMITS.name),
    name,
    phrase,
    position: isPosition(value.position) ? value.position : 2,
    level: level ?? 2,
    words: keptText(value.words, PHRASE_LIMITS.words),
    tags: keptTags(Array.isArray(value.tags) ? value.tags : []),
    earlier: earlier.slice(0, PHRASE_LIMITS.earlier).flatMap((each) => parsePhrase(each).phrase ?? []),
  };
  const problems = [...mended, ...repairsOf(value, item)];
  return { item, problems: problems.map((sentence) => `The phrase “${name}”: ${sentence}`) };
};

/** Phrases as they go into a file. */
export const PHRASES: LibraryKind<KeptPhrase> = {
  noun: 'phrase',
  plural: 'phrases',
  lacks: 'notes',
  parse: parseKeptPhrase,
};

const same = (a: Phrase, b: Phrase): boolean => JSON.stringify(a) === JSON.stringify(b);

/** The phrase with other notes; those it had are kept beside, so that they can be had again. */
export const withNotes = (kept: KeptPhrase, phrase: Phrase): KeptPhrase =>
  same(kept.phrase, phrase)
    ? kept
    : {
        ...kept,
        phrase,
        earlier: [kept.phrase, ...kept.earlier.filter((each) => !same(each, phrase))].slice(
          0,
          PHRASE_LIMITS.earlier,
        ),
      };

/** Phrases, exercises or songs whose name, tags or words hold every word typed, letters large or small. */
export const findKept = <Kept extends Pick<KeptPhrase, 'name' | 'tags' | 'words'>>(
  kept: readonly Kept[],
  typed: string,
): readonly Kept[] => {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return kept.filter(({ name, tags, words: notes }) => {
    const all = [name, ...tags, notes].join(' ').toLowerCase();
    return words.every((word) => all.includes(word));
  });
};
