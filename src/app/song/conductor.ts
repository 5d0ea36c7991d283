import type { Band } from '../../audio/band/band';
import type { Playhead } from '../../core/arranger/playhead';
import type { Section } from '../../core/arranger/program';
import { DEFAULT_SETTINGS } from '../../core/settings/defaults';
import type { Settings } from '../../core/settings/settings';
import { withFittingRepeat, withForm } from '../../core/song/key-coupling';
import { audibleSoundOf } from '../../core/song/song-program';
import { chartFor, type Tune, tuneFor } from '../../core/song/tune';
import { playingViews, restingViews } from '../../core/song/views';
import type { Notice } from '../keeping/notice';
import type { NoticeBoard } from '../keeping/notice-board';
import type { Slice } from '../slice';
import { type BandOrders, isUnderWay } from './band-orders';
import type { Song, SongState } from './song-state';

interface Needs {
  readonly store: Slice<Song, SongState>;
  readonly band: Band;
  readonly orders: BandOrders;
  readonly board: NoticeBoard;
  /** Keeps the settings for the next visit. */
  readonly keep: (settings: Settings) => void;
}

/** Keeps what is shown and what the band plays in step with what is chosen and heard. */
export interface Conductor {
  showPlayhead(position: Playhead | null): void;
  /** Carries a choice out and keeps it; one that cannot be worked out changes nothing and is said. */
  apply(asked: Settings): void;
  /** Takes a choice over that is kept already. */
  adopt(asked: Settings): void;
  /** The saved charts are others now: a chosen one is played as it stands. */
  takeSavedCharts(): void;
}

/** The music of a section with its harp and fit, worked out once a section. */
const createTuneCache = (settings: () => Settings): ((section: Section) => Tune) => {
  const tunes = new WeakMap<Section, { readonly of: Settings; readonly tune: Tune }>();
  return (section) => {
    const known = tunes.get(section);
    if (known && known.of === settings()) return known.tune;
    const tune = tuneFor(settings(), section.chart);
    tunes.set(section, { of: settings(), tune });
    return tune;
  };
};

const unworkable = (error: unknown): Notice => ({
  id: 'unworkable',
  tone: 'trouble',
  text: `That could not be worked out, so nothing was changed. It is a fault of this program (${
    error instanceof Error ? error.message : String(error)
  }); please choose something else.`,
});

const unplayable = (name: string): Notice => ({
  id: 'unplayable',
  tone: 'trouble',
  text: `The band cannot play “${name}”, so another form stands in its place. The chart is kept as you wrote it: open it under Chart and change the chord named there.`,
});

/** Keeps tune, band and view in step with the settings, the saved charts and what is heard. */
export const createConductor = ({ store, band, orders, board, keep }: Needs): Conductor => {
  const state = store.getState;
  const tuneOf = createTuneCache(() => state().settings);
  const showPlayhead = (position: Playhead | null): void => {
    if (position === null) {
      store.setState({ ...restingViews(state().tune, state().cursor), lastChorus: null });
    } else {
      store.setState(playingViews(position, band.upcoming(), tuneOf));
    }
  };
  const tuneTo = (asked: Settings): void => {
    const chart = chartFor(asked, state().ownCharts);
    const settings = withFittingRepeat(asked, chart.bars.length);
    store.setState({ settings, tune: tuneFor(settings, chart) });
  };
  const show = (): void => showPlayhead(isUnderWay(band) ? band.playhead() : null);

  /** False when the choice cannot be worked out; everything is as before then. */
  const changeTo = (asked: Settings): boolean => {
    const { settings, tune } = state();
    if (asked === settings) return false;
    try {
      tuneTo(asked);
      band.setSound(audibleSoundOf(state()));
      orders.follow();
    } catch (error) {
      store.setState({ settings, tune });
      board.post(unworkable(error));
      return false;
    }
    show();
    return true;
  };

  return {
    showPlayhead,
    apply: (asked) => {
      if (changeTo(asked)) keep(state().settings);
    },
    adopt: changeTo,
    takeSavedCharts: (): void => {
      const { settings, ownCharts } = state();
      try {
        tuneTo(settings);
      } catch (error) {
        const name = ownCharts.find(({ id }) => id === settings.formId)?.name;
        if (name === undefined) throw error;
        board.post(unplayable(name));
        tuneTo(withForm(settings, DEFAULT_SETTINGS.formId));
      }
      orders.follow();
      show();
    },
  };
};
