import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Band, BandStatus, HeardPosition } from '../audio/band';
import { DEFAULT_SETTINGS } from '../core/settings/defaults';
import type { Offline } from '../offline/offline';
import type { KeptValues } from '../storage/kept-values';
import { createBandOrders, soundOf } from './band-orders';
import { withForm } from './choices';
import { type Commands, createChoiceCommands } from './commands';
import { createConductor } from './conductor';
import { createKeeper } from './keeper';
import { createCopyCommands } from './kept-copies';
import { openSettings } from './kept-settings';
import { createNewerVersion } from './newer-version';
import { initialNewerVersion } from './newer-version-state';
import { createNoticeBoard } from './notice-board';
import { openOwnCharts } from './own-charts';
import { EMPTY_DESK } from './own-charts-desk';
import { createOwnSoundsDesk, type OwnSoundDevices } from './own-sounds';
import { NO_OWN_SOUNDS } from './own-sounds-state';
import { createPlayCommands } from './play-commands';
import type { SessionState } from './session-state';
import { openShelves } from './shelves';
import { MAKESHIFT_NOTICE, statusNotice } from './status-notice';
import { createTakeAwayCommands } from './take-away';
import type { TakeAwayDevices } from './take-away-audio';
import { INITIAL_TAKE_AWAY } from './take-away-state';
import { chartFor, tuneFor } from './tune';
import { restingViews } from './views';
import { createWarmUpRun } from './warm-up-run';

/** What the session is built from. Everything that depends on the machine comes in here. */
export interface Devices {
  readonly band: Band;
  readonly kept: KeptValues;
  /** A whole number that differs each time: the seed of a new take. */
  readonly newSeed: () => number;
  /** Runs something after so many seconds; returns what takes it back. */
  readonly later: (seconds: number, run: () => void) => () => void;
  /** What files are made with. */
  readonly takeAway: TakeAwayDevices;
  /** What plays and keeps sounds of the player's own. */
  readonly ownSounds: OwnSoundDevices;
  /** What keeps the program for use without a network; absent where nothing does. */
  readonly offline?: Offline;
}

/** Values that change too often for the store; read them in an animation frame. */
export interface Live {
  heard(): HeardPosition | null;
}

export interface Session {
  readonly store: Pick<StoreApi<SessionState>, 'getState' | 'getInitialState' | 'subscribe'>;
  readonly commands: Commands;
  readonly live: Live;
  dispose(): void;
}

const createInitialState = ({ band, offline }: Devices): SessionState => {
  const settings = DEFAULT_SETTINGS;
  const tune = tuneFor(settings, chartFor(settings, []));
  return {
    settings,
    tune,
    status: band.status(),
    ...restingViews(tune, 0),
    lastChorus: null,
    warmUp: null,
    exercise: null,
    takeAway: INITIAL_TAKE_AWAY,
    ownSounds: NO_OWN_SOUNDS,
    offline: initialNewerVersion(offline),
    notices: [],
    harpCase: [],
    ownTunings: [],
    ownCharts: [],
    chartDesk: EMPTY_DESK,
  };
};

/** Joins the core with the devices: holds the state of the page and carries out what the player asks for. */
export const createSession = (devices: Devices): Session => {
  const { band, kept, newSeed, later } = devices;
  const store = createStore<SessionState>(() => createInitialState(devices));
  const state = store.getState;
  const board = createNoticeBoard(store);
  const orders = createBandOrders(store, band);
  const keeper = createKeeper({ board, later });
  const settings = openSettings({
    kept,
    keeper,
    onNotice: board.post,
    onCalls: (calls) => adopt({ ...state().settings, trade: { ...state().settings.trade, calls } }),
  });
  store.setState({ settings: settings.first });
  const { showHeard, apply, adopt, takeSavedCharts } = createConductor({
    store,
    band,
    orders,
    board,
    keep: settings.keep,
  });

  const routine = createWarmUpRun({ store, band, soundOf, later });

  const onStatus = (status: BandStatus): void => {
    store.setState({ status });
    routine.status(status);
    const notice = statusNotice(status);
    if (notice) board.post(notice);
    else board.dismiss('band');
  };
  const shelves = openShelves({ kept, keeper, store, post: board.post });
  const charts = openOwnCharts({
    kept,
    keeper,
    store,
    post: board.post,
    newSeed,
    chooseForm: (id) => apply(withForm(state().settings, id)),
    onSaved: takeSavedCharts,
  });
  takeSavedCharts();
  const files = createTakeAwayCommands({
    store,
    devices: devices.takeAway,
    programOf: orders.programOf,
    soundOf,
  });
  const own = createOwnSoundsDesk({
    store,
    band,
    devices: devices.ownSounds,
    choose: (ownSounds) => apply({ ...state().settings, ownSounds }),
  });
  void own.restore();
  const newer = createNewerVersion(store, devices.offline);
  const onBar = (position: HeardPosition | null): void => {
    showHeard(position);
    routine.heard(position);
  };
  const unsubscribers = [
    band.onBar(onBar),
    band.onStatus(onStatus),
    band.onMakeshift(() => board.post(MAKESHIFT_NOTICE)),
    settings.dispose,
    shelves.dispose,
    charts.dispose,
    own.dispose,
    newer.dispose,
    keeper.dispose,
  ];

  return {
    store,
    commands: {
      ...createChoiceCommands((make) => apply(make(state().settings)), newSeed),
      ...createPlayCommands({ store, band, orders, board, ...routine.commands }),
      ...files,
      ...routine.commands,
      ...shelves.commands,
      ...charts.commands,
      ...own.commands,
      ...newer.commands,
      ...createCopyCommands({ kept, keeper, saver: devices.takeAway.saver }),
    },
    live: { heard: () => band.heard() },
    dispose: () => {
      for (const unsubscribe of unsubscribers) unsubscribe();
      files.cancelSaving();
      band.dispose();
    },
  };
};
