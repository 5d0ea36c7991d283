import type { Offline } from '../../offline/offline';
import type { Slice } from '../slice';
import type { NewerVersionState, OfflineState } from './newer-version-state';

export interface NewerVersionCommands {
  /** Goes over to the newer version: at once, or as soon as nothing runs that it would cut off. */
  takeNewVersion(): void;
}

/** Tells the page how it is kept, and changes versions only when that stops nothing. @param isBusy whether it would cut something off. */
export const createNewerVersion = (
  store: Slice<OfflineState>,
  offline: Offline | undefined,
  isBusy: () => boolean,
): { readonly commands: NewerVersionCommands; dispose(): void } => {
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
