import type { OwnChart } from '../chart-text/own-chart';
import { DEFAULT_SETTINGS } from '../settings/defaults';
import { freshName } from '../song/chart-drafts';
import { type BookSong, type ParsedBookSong, parseBookSong, songChoices } from './book-song';

const USUAL = songChoices(DEFAULT_SETTINGS);

/** A song as text that another page can read: what is as usual is left out. */
export const songText = ({ name, words, tags, chart, choices }: BookSong): string =>
  JSON.stringify({
    name,
    ...(words === '' ? {} : { words }),
    ...(tags.length === 0 ? {} : { tags }),
    ...(chart === null ? {} : { chart }),
    choices: Object.fromEntries(
      Object.entries(choices).filter(
        ([field, value]) => JSON.stringify(value) !== JSON.stringify(USUAL[field as keyof typeof USUAL]),
      ),
    ),
  });

/** Reads a song out of text from outside. Never throws. */
export const readSongText = (text: string): ParsedBookSong => {
  try {
    return parseBookSong(JSON.parse(text));
  } catch {
    return { item: null, problems: ['What came with the link is not a song of this program.'] };
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
