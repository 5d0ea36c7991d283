import { isRecord } from '../theory/is-record';
import { keptText } from '../theory/kept-text';
import { counted } from '../theory/wording';

/** A song's place in a set. */
export interface SetEntry {
  /** Id of a song of the book. */
  readonly song: string;
  /** Seconds of talk, and of picking up the next harp, after it. */
  readonly talk: number;
}

/** Songs in the order they are played. */
export interface GigSet {
  readonly id: string;
  readonly name: string;
  readonly entries: readonly SetEntry[];
  /** Whether each song follows by itself when the one before has ended and the talk is over. */
  readonly goesOn: boolean;
}

/** Bounds of what a set may hold. */
export const SET_LIMITS = { entries: 100, talk: 900 } as const;

/** Seconds of talk after a song unless the player says otherwise: time to speak a title and to change harps. */
const USUAL_TALK = 30;

const withEntries = (set: GigSet, entries: readonly SetEntry[]): GigSet => ({ ...set, entries });

/** The set with a song more at its end; a full set stays as it is. */
export const withSong = (set: GigSet, song: string): GigSet =>
  set.entries.length >= SET_LIMITS.entries
    ? set
    : withEntries(set, [...set.entries, { song, talk: USUAL_TALK }]);

/** The set without the entry at an index. */
export const withoutEntry = (set: GigSet, index: number): GigSet =>
  withEntries(
    set,
    set.entries.filter((_, at) => at !== index),
  );

/** The set with an entry moved to another index; the same set where either index is outside. */
export const moveEntry = (set: GigSet, from: number, to: number): GigSet => {
  const moved = set.entries[from];
  if (moved === undefined || to < 0 || to >= set.entries.length || from === to) return set;
  const others = set.entries.filter((_, at) => at !== from);
  return withEntries(set, [...others.slice(0, to), moved, ...others.slice(to)]);
};

/** The set with other talk after one of its songs, in seconds; held within 0 and `SET_LIMITS.talk`. */
export const withTalk = (set: GigSet, index: number, talk: number): GigSet =>
  withEntries(
    set,
    set.entries.map((entry, at) =>
      at === index
        ? { ...entry, talk: Math.min(SET_LIMITS.talk, Math.max(0, Math.round(talk))) || 0 }
        : entry,
    ),
  );

/**
 * How long a set lasts, in seconds: its songs and the talk between them. After the last song nothing is counted.
 * @param secondsOf length of a song; 0 for one that is gone.
 */
export const setSeconds = ({ entries }: GigSet, secondsOf: (song: string) => number): number =>
  entries.reduce(
    (sum, { song, talk }, index) => sum + secondsOf(song) + (index < entries.length - 1 ? talk : 0),
    0,
  );

/** A set read from outside and what had to be repaired. */
export interface ParsedGigSet {
  readonly item: GigSet | null;
  readonly problems: readonly string[];
}

const isTalk = (talk: unknown): talk is number =>
  typeof talk === 'number' && talk >= 0 && talk <= SET_LIMITS.talk;

const readEntry = (value: unknown): SetEntry | null => {
  if (!isRecord(value) || keptText(value.song) === '') return null;
  const { talk } = value;
  return { song: keptText(value.song), talk: isTalk(talk) ? Math.round(talk) : USUAL_TALK };
};

/** True where a talk is given that is none. */
const hasOddTalk = (value: unknown): boolean =>
  isRecord(value) && value.talk !== undefined && !isTalk(value.talk);

/** Reads a set from storage, a file or a link. Never throws; keeps every entry that names a song. */
export const parseGigSet = (value: unknown): ParsedGigSet => {
  if (!isRecord(value) || !Array.isArray(value.entries)) {
    return { item: null, problems: ['One of your sets holds no songs and was left out.'] };
  }
  const name = keptText(value.name) || 'Set without a name';
  const given: readonly unknown[] = value.entries;
  const read = given.slice(0, SET_LIMITS.entries).map(readEntry);
  const entries = read.flatMap((entry) => entry ?? []);
  const lost = given.length - entries.length;
  const odd = given.filter((each, at) => hasOddTalk(each) && read[at]).length;
  const { goesOn } = value;
  const mended = [
    ...(keptText(value.name) === '' ? ['it had no name; give it one.'] : []),
    ...(lost === 0
      ? []
      : [
          `${lost === 1 ? 'one entry' : `${lost} entries`} could not be read and ${lost === 1 ? 'was' : 'were'} left out.`,
        ]),
    ...(odd === 0
      ? []
      : [`the talk after ${counted(odd, 'song')} could not be read; ${USUAL_TALK} seconds were taken.`]),
    ...(goesOn === undefined || typeof goesOn === 'boolean'
      ? []
      : ['whether songs follow by themselves could not be read; they do not now.']),
  ];
  return {
    item: {
      id: keptText(value.id) || keptText(`set ${name}`),
      name,
      entries,
      goesOn: goesOn === true,
    },
    problems: mended.map((sentence) => `The set “${name}”: ${sentence}`),
  };
};
