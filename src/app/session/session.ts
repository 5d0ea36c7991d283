import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Band, BandStatus } from '../../audio/band/band';
import type { Playhead } from '../../core/arranger/playhead';
import { DEFAULT_SETTINGS } from '../../core/settings/defaults';
import { NO_DRAFTS } from '../../core/song/chart-drafts';
import { withForm } from '../../core/song/key-coupling';
import { audibleSoundOf, soundOf } from '../../core/song/song-program';
import { chartFor, tuneFor } from '../../core/song/tune';
import { restingViews } from '../../core/song/views';
import type { Offline } from '../../offline/offline';
import type { KeptValues } from '../../storage/kept-values';
import { openOwnCharts } from '../charts/charts';
import { createTakeAwayCommands } from '../export/export';
import type { TakeAwayDevices } from '../export/export-audio';
import { INITIAL_TAKE_AWAY } from '../export/export-state';
import { createKeeper } from '../keeping/keeper';
import { createCopyCommands } from '../keeping/kept-copies';
import { openSettings } from '../keeping/kept-settings';
import { createNoticeBoard } from '../keeping/notice-board';
import { openShelves } from '../keeping/shelves';
import { createNewerVersion } from '../offline/newer-version';
import { initialNewerVersion } from '../offline/newer-version-state';
import { createBandOrders } from '../song/band-orders';
import { createChoiceCommands } from '../song/choice-commands';
import { createConductor } from '../song/conductor';
import { createPlayCommands } from '../song/play-commands';
import { MAKESHIFT_NOTICE, statusNotice } from '../song/status-notice';
import { createOwnSoundsFeature, type OwnSoundDevices } from '../soundfont/soundfont';
import { NO_OWN_SOUNDS } from '../soundfont/soundfont-state';
import { createStage, type StageDevices } from '../stage/stage';
import { STAGE_CLOSED } from '../stage/stage-state';
import { createWarmUpRun } from '../warm-up/warm-up-run';
import type { Commands } from './commands';
import type { SessionState } from './session-state';

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
  /** The screen: kept awake, and filled; absent where there is none to speak of. */
  readonly screen?: StageDevices;
}

/** Values that change too often for the store; read them in an animation frame. */
export interface Live {
  playhead(): Playhead | null;
}

export interface Session {
  readonly store: Pick<StoreApi<SessionState>, 'getState' | 'getInitialState' | 'subscribe'>;
  readonly commands: Commands;
  readonly live: Live;
  /** To be called once the page rests: what playing would need first is computed ahead. */
  prepare(): void;
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
    muted: false,
    warmUp: null,
    exercise: null,
    takeAway: INITIAL_TAKE_AWAY,
    ownSounds: NO_OWN_SOUNDS,
    offline: initialNewerVersion(offline),
    stage: STAGE_CLOSED,
    notices: [],
    harpCase: [],
    ownTunings: [],
    ownCharts: [],
    chartDrafts: NO_DRAFTS,
  };
};

/** Whether loading the page anew would cut something off: music, a file being made or read. */
const isBusy = ({ status, warmUp, takeAway, ownSounds }: SessionState): boolean =>
  ['playing', 'loading', 'paused', 'interrupted'].includes(status.kind) ||
  warmUp !== null ||
  takeAway.job !== null ||
  ownSounds.opening !== null;

/** Joins the core with the devices: holds the state of the page and carries out what the player asks for. */
export const createSession = (devices: Devices): Session => {
  const { band, kept, newSeed, later } = devices;
  const store = createStore<SessionState>(() => createInitialState(devices));
  const state = store.getState;
  const board = createNoticeBoard(store);
  const orders = createBandOrders(store, band, later);
  const keeper = createKeeper({ board, later });
  const settings = openSettings({
    kept,
    keeper,
    onNotice: board.post,
    onCalls: (calls) => adopt({ ...state().settings, trade: { ...state().settings.trade, calls } }),
  });
  store.setState({ settings: settings.first });
  const { showPlayhead, apply, adopt, takeSavedCharts } = createConductor({
    store,
    band,
    orders,
    board,
    keep: settings.keep,
  });

  const routine = createWarmUpRun({ store, band, sound: () => audibleSoundOf(state()), later });

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
  const own = createOwnSoundsFeature({
    store,
    band,
    devices: devices.ownSounds,
    choose: (ownSounds) => apply({ ...state().settings, ownSounds }),
  });
  void own.restore();
  const newer = createNewerVersion(store, devices.offline, () => isBusy(state()));
  const stage = createStage({ store, board, devices: devices.screen });
  const onBar = (position: Playhead | null): void => {
    showPlayhead(position);
    routine.onPlayhead(position);
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
    stage.dispose,
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
      ...stage.commands,
      ...createCopyCommands({ kept, keeper, saver: devices.takeAway.saver }),
    },
    live: { playhead: () => band.playhead() },
    prepare: orders.prepare,
    dispose: () => {
      for (const unsubscribe of unsubscribers) unsubscribe();
      files.cancelSaving();
      band.dispose();
    },
  };
};
