import type { StoreApi } from 'zustand/vanilla';
import type { Offline } from '../offline/offline';
import type { NewerVersionState } from './newer-version-state';
import type { SessionState } from './session-state';

export interface NewerVersionCommands {
  /** Goes over to the newer version: at once, or as soon as nothing runs that it would cut off. */
  takeNewVersion(): void;
}

/** Whether loading the page anew would cut something off: music, a file being made or read. */
export const isBusy = ({ status, warmUp, takeAway, ownSounds }: SessionState): boolean =>
  ['playing', 'loading', 'interrupted'].includes(status.kind) ||
  warmUp !== null ||
  takeAway.job !== null ||
  ownSounds.opening !== null;

/** Tells the page how it is kept, and changes versions only when that stops nothing. */
export const createNewerVersion = (
  store: StoreApi<SessionState>,
  offline: Offline | undefined,
): { readonly commands: NewerVersionCommands; dispose(): void } => {
  const set = (change: Partial<NewerVersionState>): void =>
    store.setState(({ offline: before }) => ({ offline: { ...before, ...change } }));
  const goOver = (state: SessionState): void => {
    if (state.offline.wanted && !isBusy(state)) offline?.takeNewer();
  };
  const unsubscribers = [offline?.onStatus(set), store.subscribe(goOver)];
  return {
    commands: { takeNewVersion: () => set({ wanted: true }) },
    dispose: () => {
      for (const unsubscribe of unsubscribers) unsubscribe?.();
    },
  };
};
