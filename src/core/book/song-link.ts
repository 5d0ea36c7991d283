import type { OwnChart } from '../chart-text/own-chart';
import { DEFAULT_SETTINGS } from '../settings/defaults';
import { parseSettings } from '../settings/parse-settings';
import type { Settings } from '../settings/settings';
import { freshName } from '../song/chart-drafts';
import { type BookSong, type ParsedBookSong, parseBookSong } from './book-song';

/**
 * What of the stand is no song's and goes along with a set-up all the same: how it sounds, what is in reach, what the
 * harp is drawn with. What belongs to a machine or a body stays: the look, large print, the side of the low notes, what a
 * screen reader is told, the microphone and the delay of the loudspeaker.
 */
const STAND_NAMES = [
  'technique',
  'mix',
  'bandFollowsHarp',
  'computedVoices',
  'tabStyle',
  'besideTab',
  'plainWords',
  'drawing',
  'showCents',
  'layer',
] as const;

/** What a set-up brings beside its song. */
export type StandChoices = Pick<Settings, (typeof STAND_NAMES)[number]>;

const standChoices = (settings: Settings): StandChoices =>
  Object.fromEntries(STAND_NAMES.map((name) => [name, settings[name]])) as unknown as StandChoices;

const unusual = (choices: Partial<Settings>): Partial<Settings> =>
  Object.fromEntries(
    Object.entries(choices).filter(
      ([field, value]) => JSON.stringify(value) !== JSON.stringify(DEFAULT_SETTINGS[field as keyof Settings]),
    ),
  );

/**
 * A song as text that another page can read: what is as usual is left out.
 * @param stand settings whose way of showing and sounding goes along; null for the song alone.
 */
export const songText = (
  { name, words, tags, chart, choices }: BookSong,
  stand: Settings | null = null,
): string =>
  JSON.stringify({
    name,
    ...(words === '' ? {} : { words }),
    ...(tags.length === 0 ? {} : { tags }),
    ...(chart === null ? {} : { chart }),
    choices: unusual(choices),
    ...(stand === null ? {} : { stand: unusual(standChoices(stand)) }),
  });

/** A song read from a link. */
export interface LinkedSongText extends ParsedBookSong {
  /** What a set-up brings beside its song; null where the link holds the song alone. */
  readonly stand: StandChoices | null;
}

const readStand = (value: unknown): Pick<LinkedSongText, 'stand' | 'problems'> => {
  if (typeof value !== 'object' || value === null || !('stand' in value))
    return { stand: null, problems: [] };
  const { settings, problems } = parseSettings(value.stand);
  return { stand: standChoices(settings), problems };
};

/** Reads a song, or a whole set-up, out of text from outside. Never throws. */
export const readSongText = (text: string): LinkedSongText => {
  try {
    const value: unknown = JSON.parse(text);
    const { item, problems } = parseBookSong(value);
    const { stand, problems: ofStand } = readStand(value);
    return { item, stand: item === null ? null : stand, problems: [...problems, ...ofStand] };
  } catch {
    return { item: null, stand: null, problems: ['What came with the link is not a song of this program.'] };
  }
};

const sameText = (a: OwnChart, b: OwnChart): boolean =>
  a.text === b.text && a.tonic === b.tonic && a.mode === b.mode && a.meter === b.meter;

/** The song with its chart under an id and a name of its own where the player has another chart under that id. */
export const withOwnChart = (song: BookSong, ownCharts: readonly OwnChart[]): BookSong => {
  const { chart } = song;
  const twin = chart === null ? undefined : ownCharts.find(({ id }) => id === chart.id);
  if (chart === null || twin === undefined || sameText(chart, twin)) return song;
  const id = freshName(
    chart.id,
    ownCharts.map((each) => each.id),
  );
  const name = freshName(
    chart.name,
    ownCharts.map((each) => each.name),
  );
  return { ...song, chart: { ...chart, id, name }, choices: { ...song.choices, formId: id } };
};
