import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Band, BandStatus } from '../../audio/band/band';
import type { Playhead } from '../../core/arranger/playhead';
import { NO_CHOICES } from '../../core/settings/choice-history';
import { DEFAULT_SETTINGS } from '../../core/settings/defaults';
import { savedChart } from '../../core/song/chart-drafts';
import { chartFor, tuneFor } from '../../core/song/tune';
import { restingViews } from '../../core/song/views';
import type { KeptValues } from '../../storage/kept-values';
import type { EarLive } from '../ear/ear-live';
import { createBackupCommands } from '../keeping/backup';
import { createKeeper } from '../keeping/keeper';
import { createCopyCommands } from '../keeping/kept-copies';
import { openSettings } from '../keeping/kept-settings';
import { createNoticeBoard, type NoticeBoard } from '../keeping/notice-board';
import { openShelves } from '../keeping/shelves';
import type { Slice } from '../slice';
import { createBandOrders } from '../song/band-orders';
import { createChoiceCommands } from '../song/choice-commands';
import { createChoosing } from '../song/choosing';
import { type Conductor, createConductor } from '../song/conductor';
import type { Joined } from '../song/feature';
import { createPlayCommands } from '../song/play-commands';
import { MAKESHIFT_NOTICE, statusNotice } from '../song/status-notice';
import { createSwapNotice } from '../song/swap-notice';
import type { Commands } from './commands';
import { commandsOf, type FeatureDevices, initialFeatures, joinFeatures } from './features';
import type { SessionState } from './session-state';

/** What the session is built from. Everything that depends on the machine comes in here. */
export type Devices = FeatureDevices & {
  readonly band: Band;
  readonly kept: KeptValues;
  /** A whole number that differs each time: the seed of a new take. */
  readonly newSeed: () => number;
  /** Runs something after so many seconds; returns what takes it back. */
  readonly later: (seconds: number, run: () => void) => () => void;
};

/** Values that change too often for the store; read them in an animation frame. */
export interface Live {
  playhead(): Playhead | null;
  readonly ear: EarLive;
}

export interface Session {
  readonly store: Pick<StoreApi<SessionState>, 'getState' | 'getInitialState' | 'subscribe'>;
  readonly commands: Commands;
  readonly live: Live;
  /** To be called once the page rests: what playing would need first is computed ahead. */
  prepare(): void;
  dispose(): void;
}

const createInitialState = (devices: Devices): SessionState => {
  const settings = DEFAULT_SETTINGS;
  const features = initialFeatures(devices);
  const tune = tuneFor(settings, chartFor(settings, features.ownCharts));
  return {
    settings,
    tune,
    status: devices.band.status(),
    ...restingViews(tune, 0),
    lastChorus: null,
    muted: false,
    waiting: null,
    choices: NO_CHOICES,
    taken: '',
    notices: [],
    harpCase: [],
    ownTunings: [],
    ...features,
  };
};

interface Listening {
  readonly store: Slice<SessionState>;
  readonly band: Band;
  readonly board: NoticeBoard;
  readonly conductor: Conductor;
  readonly joined: readonly Joined<object>[];
}

/** Hands on what the band tells: to the stand first, then to every feature. Returns the unsubscribers. */
const listenToBand = ({ store, band, board, conductor, joined }: Listening): readonly (() => void)[] => [
  band.onBar((position) => {
    conductor.showPlayhead(position);
    for (const { onPlayhead } of joined) onPlayhead?.(position);
  }),
  band.onStatus((status) => {
    store.setState({ status });
    for (const { onStatus } of joined) onStatus?.(status);
    const notice = statusNotice(status);
    if (notice) board.post(notice);
    else board.dismiss('band');
  }),
  band.onMakeshift(() => board.post(MAKESHIFT_NOTICE)),
];

const isUnderWay = ({ kind }: BandStatus): boolean =>
  ['playing', 'loading', 'paused', 'interrupted'].includes(kind);

/** Joins the core with the devices: holds the state of the page and carries out what the player asks for. */
export const createSession = (devices: Devices): Session => {
  const { band, kept, newSeed, later } = devices;
  const store = createStore<SessionState>(() => createInitialState(devices));
  const state = store.getState;
  const board = createNoticeBoard(store);
  const orders = createBandOrders(store, band, { later, newSeed });
  const keeper = createKeeper({ board, later });
  const settings = openSettings({
    kept,
    keeper,
    onNotice: board.post,
    onCalls: (calls) => choosing.adopt((now) => ({ ...now, trade: { ...now.trade, calls } })),
  });
  store.setState({ settings: settings.first });
  const conductor = createConductor({ store, band, orders, board });
  const choosing = createChoosing({ store, band, conductor, keep: settings.keep, later });
  const shelves = openShelves({ kept, keeper, store, post: board.post });
  const { apply } = choosing;
  const { takeSavedCharts } = conductor;
  const isBusy = (): boolean => isUnderWay(state().status) || joined.some((each) => each.isBusy?.());
  const stand = {
    ...{ store, band, orders, board, kept, keeper, newSeed, later, apply, takeSavedCharts, isBusy },
    ask: () => commands,
  };
  const joined: readonly Joined<object>[] = joinFeatures(stand, devices);
  const commands = commandsOf(joined);
  const ending = [
    ...listenToBand({ store, band, board, conductor, joined: [choosing, ...joined] }),
    settings.dispose,
    shelves.dispose,
    ...joined.map(({ dispose }) => dispose),
    keeper.dispose,
    () => band.dispose(),
  ];
  return {
    store,
    commands: {
      ...createChoiceCommands({
        change: choosing.change,
        newSeed,
        ownChart: (id) => savedChart(store.getState().ownCharts, id),
        ...createSwapNotice({ store, board, later }),
      }),
      ...choosing.commands,
      ...createPlayCommands({ store, band, orders, board, follow: choosing.follow, ...commands }),
      ...createCopyCommands({ kept, keeper, saver: devices.takeAway.saver }),
      ...createBackupCommands({ store, keeper, saver: devices.takeAway.saver, apply }),
      ...shelves.commands,
      ...commands,
    },
    live: { playhead: () => band.playhead(), ear: commands.hearing().live },
    prepare: () => void orders.prepare(),
    dispose: () => {
      for (const end of ending) end?.();
    },
  };
};
