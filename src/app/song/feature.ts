import type { Band, BandStatus } from '../../audio/band/band';
import type { Playhead } from '../../core/arranger/playhead';
import type { Settings } from '../../core/settings/settings';
import type { KeptValues } from '../../storage/kept-values';
import type { Keeper } from '../keeping/keeper';
import type { NoticeBoard } from '../keeping/notice-board';
import type { Slice } from '../slice';
import type { BandOrders } from './band-orders';

/** What a feature finds on the stand: its slice of the state, the band, and the ways to choose, keep and tell. */
export interface Stand<State, Asks = unknown> {
  readonly store: Slice<State>;
  readonly band: Band;
  readonly orders: BandOrders;
  readonly board: NoticeBoard;
  readonly kept: KeptValues;
  readonly keeper: Keeper;
  /** A whole number that differs each time and from tab to tab. */
  readonly newSeed: () => number;
  /** Runs something after so many seconds; returns what takes it back. */
  readonly later: (seconds: number, run: () => void) => () => void;
  /** Carries a choice out and keeps it, everything that depends on it included. */
  readonly apply: (asked: Settings) => void;
  /** To be called when the saved charts are others than before. */
  readonly takeSavedCharts: () => void;
  /** Whether loading the page anew would cut something off: music, a file being made or read. */
  readonly isBusy: () => boolean;
  /** What can be asked of the other features, once all of them have joined. */
  readonly ask: () => Asks;
}

/** A feature at work. */
export interface Joined<Commands> {
  readonly commands: Commands;
  /** Told of the playhead once a bar, after the stand shows it; `null` when nothing plays. */
  readonly onPlayhead?: (position: Playhead | null) => void;
  /** Told how the band is whenever that changes. */
  readonly onStatus?: (status: BandStatus) => void;
  /** Whether loading the page anew would cut off what this feature does. */
  readonly isBusy?: () => boolean;
  readonly dispose?: () => void;
}

/**
 * What a feature does once it is here, fetched after the page is first drawn: `Device` is what it stands on, `Reads`
 * what it reads of the state beside its own slice, `Asks` what it asks of other features.
 *
 * @example
 * // A counter of choruses with a command and no device. A line in `app/session/features.ts` adds it to the page:
 * // count: { initial: NO_CHORUSES, load: async () => (await import('../count/count')).joinCount },
 * export const joinCount: Join<{ count: number }, { resetCount(): void }> = ({ store }) => ({
 *   commands: { resetCount: () => store.setState({ count: 0 }) },
 *   onPlayhead: (position) => store.setState({ count: (position?.section.chorus ?? -1) + 1 }),
 * });
 */
export type Join<State, Commands, Device = undefined, Reads = unknown, Asks = unknown> = (
  stand: Stand<State & Reads, Asks>,
  device: Device,
) => Joined<Commands>;
