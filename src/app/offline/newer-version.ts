import type { Offline } from '../../offline/offline';
import type { Join } from '../song/feature';
import type { NewerVersionState, OfflineState } from './newer-version-state';

export interface NewerVersionCommands {
  /** Goes over to the newer version: at once, or as soon as nothing runs that it would cut off. */
  takeNewVersion(): void;
}

/**
 * Tells the page how the program is kept, and goes over to a newer version of it only when that stops nothing. A
 * development server keeps nothing.
 */
export const joinNewerVersion: Join<OfflineState, NewerVersionCommands, Offline | undefined> = (
  { store, isBusy },
  offline,
) => {
  const set = (change: Partial<NewerVersionState>): void =>
    store.setState(({ offline: before }) => ({ offline: { ...before, ...change } }));
  const goOver = (state: OfflineState): void => {
    if (state.offline.wanted && !isBusy()) offline?.takeNewer();
  };
  set(offline?.status() ?? {});
  const unsubscribers = [offline?.onStatus(set), store.subscribe(goOver)];
  return {
    commands: { takeNewVersion: () => set({ wanted: true }) },
    dispose: () => {
      for (const unsubscribe of unsubscribers) unsubscribe?.();
    },
  };
};
