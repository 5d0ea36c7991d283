import { type BookSong, withBookSong } from '../../core/book/book-song';
import { restingViews } from '../../core/song/views';
import type { Stand } from '../song/feature';
import type { SongState } from '../song/song-state';
import type { ChartCommands } from './charts';
import type { ChartsState } from './charts-state';

type Needs = Pick<
  Stand<ChartsState & SongState, Pick<ChartCommands, 'keepChart'>>,
  'store' | 'band' | 'apply' | 'ask'
>;

/** Puts a song on the stand, its chart with it where the player has none of that id; a band that plays is stopped. */
export const putSongOnStand = ({ store, band, apply, ask }: Needs, song: BookSong): void => {
  band.stop();
  const { chart } = song;
  if (chart !== null && !store.getState().ownCharts.some((each) => each.id === chart.id))
    ask().keepChart(chart);
  apply(withBookSong(store.getState().settings, song));
  store.setState({ ...restingViews(store.getState().tune, 0), lastChorus: null });
};
