import { type OwnChart, parseOwnChart } from '../chart-text/own-chart';
import { HARP_SETTINGS } from '../settings/harp-settings';
import { parseSettings } from '../settings/parse-settings';
import { PRACTICE_SETTINGS } from '../settings/practice-settings';
import type { Settings } from '../settings/settings';
import { SONG_SETTINGS } from '../settings/song-settings';
import { isRecord } from '../theory/is-record';
import { keptTags } from '../theory/kept-tags';
import { cutText, keptText } from '../theory/kept-text';

/**
 * What is the player's own way with every song, and so no song's: what they can reach, what they keep in hand, the
 * microphone of this machine and what is kept and shown of what it hears.
 */
const PLAYERS = [
  'technique',
  'songPinned',
  'harpLocked',
  'microphone',
  'takeMinutes',
  'earShows',
  'bends',
  'classLevels',
] as const;

const ALL_OF_A_SONG = { ...HARP_SETTINGS, ...SONG_SETTINGS, ...PRACTICE_SETTINGS };

/** The choices that make a song: harp, music and what is practised over it. */
export type SongChoices = Omit<Pick<Settings, keyof typeof ALL_OF_A_SONG>, (typeof PLAYERS)[number]>;

const isPlayers = (name: string): boolean => (PLAYERS as readonly string[]).includes(name);

const SONG_NAMES = Object.keys(ALL_OF_A_SONG).filter((name) => !isPlayers(name));

/** A song of the player's book: all that the stand holds, under a name. */
export interface BookSong {
  readonly id: string;
  readonly name: string;
  readonly choices: SongChoices;
  /** The chart of the player's own that it is played on, as it was when the song was kept; `null` for a built-in form. */
  readonly chart: OwnChart | null;
  /** What the player wants to remember, in words. */
  readonly words: string;
  readonly tags: readonly string[];
}

/** The longest note kept with a song, in characters, and the most tags. */
export const SONG_LIMITS = { words: 2000 } as const;

/** The choices of the stand that belong to the song on it. */
export const songChoices = (settings: Settings): SongChoices =>
  Object.fromEntries(Object.entries(settings).filter(([name]) => SONG_NAMES.includes(name))) as SongChoices;

/**
 * What is on the stand, as a song with a name.
 *
 * @example
 * bookSong({ id: 'song-1', name: 'Wet Boots' }, DEFAULT_SETTINGS, []).choices.tempo // 104
 */
export const bookSong = (
  { id, name }: Pick<BookSong, 'id' | 'name'>,
  settings: Settings,
  ownCharts: readonly OwnChart[],
): BookSong => ({
  id,
  name: keptText(name) || 'Song without a name',
  choices: songChoices(settings),
  chart: ownCharts.find((chart) => chart.id === settings.formId) ?? null,
  words: '',
  tags: [],
});

/** The choices of the stand with a song on it; what is the player's own stays. */
export const withBookSong = (settings: Settings, { choices }: BookSong): Settings => ({
  ...settings,
  ...choices,
});

/** The choices by which a song is known: every Play is a take of its own unless one take is kept. */
const knownBy = (settings: Settings): SongChoices => {
  const choices = songChoices(settings);
  return choices.sameTake ? choices : { ...choices, style: { ...choices.style, seed: 0 } };
};

/** Whether the stand holds the song just as it was kept. */
export const isOnStand = (settings: Settings, { choices }: BookSong): boolean =>
  JSON.stringify(knownBy({ ...settings, ...choices })) === JSON.stringify(knownBy(settings));

/** A song read from outside and what had to be repaired; `null` where it holds no choices at all. */
export interface ParsedBookSong {
  readonly item: BookSong | null;
  /** Sentences for the player; empty when all was well. */
  readonly problems: readonly string[];
}

const readChart = (value: unknown): ReturnType<typeof parseOwnChart> =>
  value === null || value === undefined ? { chart: null, problems: [] } : parseOwnChart(value);

const readTagList = (value: unknown): readonly string[] | null =>
  Array.isArray(value) && value.every((tag) => typeof tag === 'string') ? keptTags(value) : null;

/** Reads a song from storage, a file or a link. Never throws; keeps every choice that can be read and names the others. */
export const parseBookSong = (value: unknown): ParsedBookSong => {
  if (!isRecord(value) || !isRecord(value.choices)) {
    return { item: null, problems: ['One of the songs in your book holds no choices and was left out.'] };
  }
  const name = keptText(value.name) || 'Song without a name';
  const { settings, problems } = parseSettings(value.choices);
  const { chart, problems: chartProblems } = readChart(value.chart);
  const tags = readTagList(value.tags);
  const item: BookSong = {
    id: keptText(value.id) || keptText(`song ${name}`),
    name,
    choices: songChoices(settings),
    chart,
    words: typeof value.words === 'string' ? cutText(value.words, SONG_LIMITS.words) : '',
    tags: tags ?? [],
  };
  return {
    item,
    problems: [
      ...problems,
      ...chartProblems,
      ...(keptText(value.name) === '' ? ['It had no name; give it one.'] : []),
      ...(tags === null && value.tags !== undefined ? ['Its tags could not be read; it has none now.'] : []),
      ...(typeof value.words === 'string' || value.words === undefined
        ? []
        : ['Its words could not be read; it has none now.']),
      ...(typeof value.words === 'string' && value.words.length > SONG_LIMITS.words
        ? [`Of its words the first ${SONG_LIMITS.words} letters were kept.`]
        : []),
    ].map((problem) => `The song “${name}”: ${problem}`),
  };
};
