import type { Offline, OfflineStatus } from '../../src/offline/offline';

/** What keeps the program in tests: it is told how that goes, and counts how often the newer version was taken: once at most. */
export interface FakeOffline extends Offline {
  report(status: OfflineStatus): void;
  readonly taken: () => number;
}

export const createFakeOffline = (): FakeOffline => {
  const listeners = new Set<(status: OfflineStatus) => void>();
  let status: OfflineStatus = { keeping: 'fetching', newer: false };
  let taken = 0;
  return {
    status: () => status,
    onStatus: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    takeNewer: () => {
      if (status.newer) taken = 1;
    },
    report: (next) => {
      if (next.keeping === status.keeping && next.newer === status.newer) return;
      status = next;
      for (const listener of listeners) listener(next);
    },
    taken: () => taken,
  };
};
