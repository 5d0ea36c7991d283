import type { Band } from '../../audio/band/band';
import type { Playhead } from '../../core/arranger/playhead';
import type { Section } from '../../core/arranger/program';
import type { Chart } from '../../core/chart/chart';
import { DEFAULT_SETTINGS } from '../../core/settings/defaults';
import type { Settings } from '../../core/settings/settings';
import { chartFor } from '../../core/song/chosen-chart';
import { withHeld } from '../../core/song/held-choices';
import { withForm } from '../../core/song/key-coupling';
import { audibleSoundOf } from '../../core/song/song-program';
import { isSameTune, type Tune, tuneFor, withFittingRepeat } from '../../core/song/tune';
import { playingViews, restingViews } from '../../core/song/views';
import { messageOf } from '../../core/theory/thrown';
import type { PitchClass } from '../../core/theory/units';
import type { Notice } from '../keeping/notice';
import type { NoticeBoard } from '../keeping/notice-board';
import type { Slice } from '../slice';
import { type BandOrders, isUnderWay } from './band-orders';
import type { Song, SongState, Waiting } from './song-state';

interface Needs {
  readonly store: Slice<Song, SongState>;
  readonly band: Band;
  readonly orders: BandOrders;
  readonly board: NoticeBoard;
}

/** Keeps what is shown and what the band plays in step with what is chosen and heard. */
export interface Conductor {
  showPlayhead(position: Playhead | null): void;
  /**
   * Carries a choice out, and takes note of what waits; where either cannot be worked out nothing changes, which is
   * said, and the answer is false.
   */
  change(asked: Settings, wait: Pick<Waiting, 'from' | 'held'> | null): boolean;
  /** The saved charts are others now: a chosen one is played as it stands. */
  takeSavedCharts(): void;
}

/** The music of a section with its harp and fit, worked out once a section. */
const createTuneCache = (settingsFor: (section: Section) => Settings): ((section: Section) => Tune) => {
  const tunes = new WeakMap<Section, { readonly of: Settings; readonly tune: Tune }>();
  return (section) => {
    const known = tunes.get(section);
    const settings = settingsFor(section);
    if (known && isSameTune(known.of, settings)) return known.tune;
    const tune = tuneFor(settings, section.chart);
    tunes.set(section, { of: settings, tune });
    return tune;
  };
};

/** The chosen form in another key than its own, worked out once. */
const createFormCache = (state: () => Song): ((key: PitchClass) => Chart) => {
  let known:
    | (Pick<Song, 'settings' | 'ownCharts'> & { readonly key: PitchClass; readonly form: Chart })
    | null = null;
  return (key) => {
    const { settings, ownCharts, tune } = state();
    if (key === tune.chart.key) return tune.chart;
    if (known?.key !== key || !isSameTune(known.settings, settings) || known.ownCharts !== ownCharts)
      known = { settings, ownCharts, key, form: chartFor(settings, ownCharts, key) };
    return known.form;
  };
};

const unworkable = (error: unknown): Notice => ({
  id: 'unworkable',
  tone: 'trouble',
  text: `That could not be worked out, so nothing was changed. It is a fault of this program (${messageOf(
    error,
  )}); please choose something else.`,
});

const unplayable = (name: string): Notice => ({
  id: 'unplayable',
  tone: 'trouble',
  text: `The band cannot play “${name}”, so another form stands in its place. The chart is kept as you wrote it: open it under Song, Charts and change the chord named there.`,
});

/** Keeps tune, band and view in step with the settings, the saved charts and what is heard. */
export const createConductor = ({ store, band, orders, board }: Needs): Conductor => {
  const state = store.getState;
  const tuneOf = createTuneCache(({ chorus }) => {
    const { waiting, settings } = state();
    return waiting?.from != null && chorus >= waiting.from ? waiting.settings : settings;
  });
  const formIn = createFormCache(state);
  const showPlayhead = (position: Playhead | null): void => {
    if (position === null) {
      store.setState({ ...restingViews(state().tune, state().cursor), lastChorus: null });
    } else {
      store.setState({
        ...playingViews(position, band.upcoming(), tuneOf),
        form: formIn(position.section.chart.key),
      });
    }
  };
  const tuneTo = (asked: Settings): void => {
    const chart = chartFor(asked, state().ownCharts);
    const settings = withFittingRepeat(asked, chart.bars.length);
    store.setState({ settings, tune: tuneFor(settings, chart) });
  };
  const show = (): void => showPlayhead(isUnderWay(band) ? band.playhead() : null);

  const waitFor = ({ from, held }: Pick<Waiting, 'from' | 'held'>): Waiting => {
    const settings = withHeld(state().settings, held);
    return { from, held, settings, tune: tuneFor(settings, chartFor(settings, state().ownCharts)) };
  };

  return {
    showPlayhead,
    change: (asked, wait) => {
      const { settings, tune, waiting } = state();
      if (asked === settings && wait === null && waiting === null) return false;
      try {
        // Most choices leave the tune as it is: the page then has nothing to draw anew but what was chosen.
        if (isSameTune(settings, asked)) {
          store.setState({ settings: withFittingRepeat(asked, tune.chart.bars.length) });
        } else tuneTo(asked);
        store.setState({ waiting: wait && waitFor(wait) });
        band.setSound(audibleSoundOf(state()));
        orders.follow();
      } catch (error) {
        store.setState({ settings, tune, waiting });
        board.post(unworkable(error));
        return false;
      }
      if (isUnderWay(band) || state().tune !== tune) show();
      return true;
    },
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
      const { waiting } = state();
      if (waiting !== null) store.setState({ waiting: waitFor(waiting) });
      orders.follow();
      show();
    },
  };
};
