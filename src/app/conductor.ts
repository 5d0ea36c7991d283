import type { StoreApi } from 'zustand/vanilla';
import type { Band, HeardPosition } from '../audio/band';
import type { Section } from '../core/arranger/program';
import type { Settings } from '../core/settings/settings';
import type { KeptValues } from '../storage/kept-values';
import { type BandOrders, isUnderWay, soundOf } from './band-orders';
import { withFittingRepeat } from './choices';
import { keepSettings } from './kept-settings';
import type { NoticeBoard } from './notice-board';
import type { SessionState } from './session-state';
import { chartFor, type Tune, tuneFor } from './tune';
import { heardViews, restingViews } from './views';

interface Parts {
  readonly store: StoreApi<SessionState>;
  readonly band: Band;
  readonly orders: BandOrders;
  readonly board: NoticeBoard;
  readonly kept: KeptValues;
}

/** Keeps what is shown and what the band plays in step with what is chosen and heard. */
export interface Conductor {
  showHeard(position: HeardPosition | null): void;
  apply(asked: Settings): void;
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

/** Keeps tune, band and view in step with the settings, the saved charts and what is heard. */
export const createConductor = ({ store, band, orders, board, kept }: Parts): Conductor => {
  const state = store.getState;
  const tuneOf = createTuneCache(() => state().settings);
  const showHeard = (position: HeardPosition | null): void => {
    if (position === null) {
      store.setState({ ...restingViews(state().tune, state().cursor), lastChorus: null });
    } else {
      store.setState(heardViews(position, band.upcoming(), tuneOf));
    }
  };
  const tuneTo = (asked: Settings): void => {
    const chart = chartFor(asked, state().ownCharts);
    const settings = withFittingRepeat(asked, chart.bars.length);
    store.setState({ settings, tune: tuneFor(settings, chart) });
  };
  const show = (): void => showHeard(isUnderWay(band) ? band.heard() : null);
  return {
    showHeard,
    apply: (asked: Settings): void => {
      if (asked === state().settings) return;
      tuneTo(asked);
      const { settings } = state();
      const trouble = keepSettings(kept, settings);
      if (trouble) board.post(trouble);
      else board.dismiss('storage');
      band.setSound(soundOf(state()));
      orders.follow();
      show();
    },
    takeSavedCharts: (): void => {
      tuneTo(state().settings);
      orders.follow();
      show();
    },
  };
};
