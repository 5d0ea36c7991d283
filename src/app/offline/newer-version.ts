import type { Offline } from '../../offline/offline';
import type { Feature, Joined, Stand } from '../song/feature';
import { initialNewerVersion, type NewerVersionState, type OfflineState } from './newer-version-state';

export interface NewerVersionCommands {
  /** Goes over to the newer version: at once, or as soon as nothing runs that it would cut off. */
  takeNewVersion(): void;
}

/** Tells the page how it is kept, and changes versions only when that stops nothing. */
const createNewerVersion = (
  { store, isBusy }: Stand<OfflineState>,
  offline: Offline | undefined,
): Joined<NewerVersionCommands> => {
  const set = (change: Partial<NewerVersionState>): void =>
    store.setState(({ offline: before }) => ({ offline: { ...before, ...change } }));
  const goOver = (state: OfflineState): void => {
    if (state.offline.wanted && !isBusy()) offline?.takeNewer();
  };
  const unsubscribers = [offline?.onStatus(set), store.subscribe(goOver)];
  return {
    commands: { takeNewVersion: () => set({ wanted: true }) },
    dispose: () => {
      for (const unsubscribe of unsubscribers) unsubscribe?.();
    },
  };
};

/** How the program is kept and a newer version of it. A development server keeps nothing. */
export const newerVersionFeature: Feature<OfflineState, NewerVersionCommands, Offline | undefined> = {
  initial: (offline) => ({ offline: initialNewerVersion(offline) }),
  join: createNewerVersion,
};
