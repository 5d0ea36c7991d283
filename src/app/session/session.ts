import type { StoreApi } from 'zustand/vanilla';
import type { Band, BandStatus } from '../../audio/band/band';
import { savedChart } from '../../core/song/chart-drafts';
import type { KeptValues } from '../../storage/kept-values';
import { createBackupCommands } from '../keeping/backup';
import { createKeeper } from '../keeping/keeper';
import { createCopyCommands } from '../keeping/kept-copies';
import { openSettings } from '../keeping/kept-settings';
import { createNoticeBoard, type NoticeBoard } from '../keeping/notice-board';
import { openShelves } from '../keeping/shelves';
import type { Slice } from '../slice';
import { createBandOrders } from '../song/band-orders';
import { type ChoiceCommands, createChoiceCommands } from '../song/choice-commands';
import { type Choosing, createChoosing } from '../song/choosing';
import { type Conductor, createConductor } from '../song/conductor';
import type { Joined, Stand } from '../song/feature';
import { createPlayCommands, type PlayCommands } from '../song/play-commands';
import { MAKESHIFT_NOTICE, statusNotice } from '../song/status-notice';
import { createSwapNotice } from '../song/swap-notice';
import type { Commands } from './commands';
import {
  type AskedCommands,
  commandsOf,
  type FeatureCommands,
  type FeatureDevices,
  joinFeatures,
  type LoadedFeatures,
} from './features';
import type { PageSession } from './page-session';
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

/** The page's session with everything that belongs to it. */
export interface Session extends PageSession {
  readonly commands: Commands;
  /** To be called once the page rests: what playing would need first is computed ahead. */
  prepare(): void;
  dispose(): void;
}

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

interface OfStand
  extends Pick<Stand<SessionState>, 'store' | 'band' | 'orders' | 'board' | 'newSeed' | 'later'> {
  readonly commands: FeatureCommands;
}

/** The commands of the stand itself: choosing, playing, moving. */
const createStandCommands = (
  { store, band, orders, board, newSeed, later, commands }: OfStand,
  { change, follow }: Pick<Choosing, 'change' | 'follow'>,
): ChoiceCommands & PlayCommands => ({
  ...createChoiceCommands({
    change,
    newSeed,
    ownChart: (id) => savedChart(store.getState().ownCharts, id),
    ...createSwapNotice({ store, board, later }),
  }),
  ...createPlayCommands({ store, band, orders, board, follow, ...commands }),
});

/**
 * Joins the core with the devices: carries out what the player asks for on the state the page was opened with.
 * @param features what the features do, fetched
 */
export const createSession = (
  store: StoreApi<SessionState>,
  devices: Devices,
  features: LoadedFeatures,
): Session => {
  const { band, kept, newSeed, later } = devices;
  const state = store.getState;
  const { saver } = devices.takeAway;
  const board = createNoticeBoard(store);
  const orders = createBandOrders(store, band, { later, newSeed });
  const keeper = createKeeper({ board, later });
  const settings = openSettings({
    kept,
    keeper,
    opened: state().settings,
    onNotice: board.post,
    onCalls: (calls) => choosing.adopt((now) => ({ ...now, trade: { ...now.trade, calls } })),
  });
  store.setState({ status: band.status() });
  const conductor = createConductor({ store, band, orders, board });
  const choosing = createChoosing({ store, band, conductor, keep: settings.keep, later });
  const shelves = openShelves({ kept, keeper, store, post: board.post });
  const { apply } = choosing;
  const isBusy = (): boolean => isUnderWay(state().status) || joined.some((each) => each.isBusy?.());
  const stand = {
    ...{ store, band, orders, board, kept, keeper, newSeed, later, apply, isBusy },
    takeSavedCharts: conductor.takeSavedCharts,
    ask: () => asked,
  };
  const joined: readonly Joined<object>[] = joinFeatures(features, stand, devices);
  const commands = commandsOf(joined);
  const asked: AskedCommands = { ...createStandCommands({ ...stand, commands }, choosing), ...commands };
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
      ...choosing.commands,
      ...createCopyCommands({ kept, keeper, saver }),
      ...createBackupCommands({ store, keeper, saver, apply }),
      ...shelves.commands,
      ...asked,
    },
    live: { playhead: () => band.playhead(), ear: commands.hearing().live },
    prepare: () => void orders.prepare(),
    dispose: () => {
      for (const end of ending) end?.();
    },
  };
};
