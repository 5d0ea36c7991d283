import type { OwnChart } from '../chart-text/own-chart';
import type { LibraryKind } from '../phrasebook/library-file';
import type { Settings } from '../settings/settings';
import { isRecord } from '../theory/is-record';
import { type BookSong, bookSong, parseBookSong } from './book-song';
import { readSongText, songText } from './song-link';

/** An exercise of the player's library: what is traded over which music, as a song holds it. */
export interface KeptExercise extends BookSong {
  /** What it was before it was changed, the latest first: as the text of a link, which is short. */
  readonly earlier: readonly string[];
}

/** Most earlier versions, and the longest text of one that is kept. */
const EARLIER = { most: 8, longest: 40_000 } as const;

/** An exercise read from outside, and what had to be mended. */
export interface ParsedKeptExercise {
  readonly item: KeptExercise | null;
  readonly problems: readonly string[];
}

const earlierOf = (value: unknown): Pick<KeptExercise, 'earlier'> & Pick<ParsedKeptExercise, 'problems'> => {
  const given: unknown = isRecord(value) ? (value.earlier ?? []) : [];
  const texts: readonly unknown[] = Array.isArray(given) ? given : [null];
  const read = texts
    .filter((each): each is string => typeof each === 'string' && each.length <= EARLIER.longest)
    .filter((each) => readSongText(each).item !== null);
  return {
    earlier: read.slice(0, EARLIER.most),
    problems:
      read.length === texts.length
        ? []
        : ['Some of its earlier versions could not be read and were left out.'],
  };
};

/** Reads an exercise of the library from storage or a file. Never throws; what cannot be read is said, the rest kept. */
export const parseKeptExercise = (value: unknown): ParsedKeptExercise => {
  const { item, problems } = parseBookSong(value);
  if (item === null)
    return { item: null, problems: ['One of the exercises could not be read and was left out.'] };
  const { earlier, problems: lost } = earlierOf(value);
  return {
    item: { ...item, earlier },
    problems: [
      ...problems.map((sentence) => sentence.replace(/^The song/, 'The exercise')),
      ...lost.map((sentence) => `The exercise “${item.name}”: ${sentence}`),
    ],
  };
};

/** Exercises as they go into a file. */
export const EXERCISES: LibraryKind<KeptExercise> = {
  noun: 'exercise',
  plural: 'exercises',
  lacks: 'choices',
  parse: parseKeptExercise,
};

/** What is on the stand as an exercise with a name, calls and partner included. */
export const exerciseOf = (
  name: Pick<BookSong, 'id' | 'name'>,
  settings: Settings,
  ownCharts: readonly OwnChart[],
): KeptExercise => ({ ...bookSong(name, settings, ownCharts), earlier: [] });

/** The exercise as it is on the stand now; what it was is kept beside, so that it can be had again. */
export const withStand = (
  kept: KeptExercise,
  settings: Settings,
  ownCharts: readonly OwnChart[],
): KeptExercise => {
  const before = songText(kept);
  const { choices, chart } = bookSong(kept, settings, ownCharts);
  const now = { ...kept, choices, chart };
  const text = songText(now);
  return text === before
    ? kept
    : {
        ...now,
        earlier: [before, ...kept.earlier.filter((each) => each !== before && each !== text)].slice(
          0,
          EARLIER.most,
        ),
      };
};

/** The exercise as an earlier version of it was, counted from the latest; null where there is none. */
export const earlierExercise = (kept: KeptExercise, which: number): BookSong | null => {
  const { item } = readSongText(kept.earlier[which] ?? '');
  return item === null ? null : { ...kept, choices: item.choices, chart: item.chart };
};
