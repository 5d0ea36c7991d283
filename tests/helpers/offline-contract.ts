import type { Offline } from '../../src/offline/offline';

/** What the program relies on in what keeps it: one list for the one moved by hand that tests use and for the real one. */
export interface OfflineBehaviour {
  readonly does: string;
  readonly act: (stage: OfflineStage) => Promise<unknown>;
  readonly expected: unknown;
}

/** At a visit when nothing is known yet of how the program is kept. */
export interface OfflineStage {
  readonly offline: Offline;
  /** All of it is kept. */
  readonly keep: () => Promise<void>;
  /** A newer version lies ready. */
  readonly find: () => Promise<void>;
  /** How often the newer version was asked for. */
  readonly taken: () => number;
}

export const OFFLINE_BEHAVIOURS: readonly OfflineBehaviour[] = [
  {
    does: 'is fetching at first',
    act: async ({ offline }) => offline.status(),
    expected: { keeping: 'fetching', newer: false },
  },
  {
    does: 'tells once that all is kept, and once of a newer version',
    act: async ({ offline, keep, find }) => {
      const told: unknown[] = [];
      offline.onStatus((status) => told.push(status));
      await keep();
      await keep();
      await find();
      return [told, offline.status()];
    },
    expected: [
      [
        { keeping: 'kept', newer: false },
        { keeping: 'kept', newer: true },
      ],
      { keeping: 'kept', newer: true },
    ],
  },
  {
    does: 'takes no newer version while there is none',
    act: async ({ offline, keep, taken }) => {
      offline.takeNewer();
      await keep();
      offline.takeNewer();
      return taken();
    },
    expected: 0,
  },
  {
    does: 'takes the newer version once, however often it is asked',
    act: async ({ offline, keep, find, taken }) => {
      await keep();
      await find();
      offline.takeNewer();
      offline.takeNewer();
      return taken();
    },
    expected: 1,
  },
  {
    does: 'tells nothing to whoever left',
    act: async ({ offline, keep }) => {
      const told: unknown[] = [];
      offline.onStatus((status) => told.push(status))();
      await keep();
      return told;
    },
    expected: [],
  },
];
