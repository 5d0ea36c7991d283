import type { Keeping, Offline } from '../../offline/offline';

/** How the program is kept for use without a network, and what becomes of a newer version of it. */
export interface NewerVersionState {
  /** `off` where nothing keeps it: a development server. */
  readonly keeping: Keeping | 'off';
  /** Whether a newer version lies ready. */
  readonly newer: boolean;
  /** Whether the player has asked for it. */
  readonly wanted: boolean;
}

/** The state before anything was heard of a newer version. */
export const initialNewerVersion = (offline: Offline | undefined): NewerVersionState => ({
  ...(offline?.status() ?? { keeping: 'off', newer: false }),
  wanted: false,
});

/** How the program is kept, as the page shows it. */
export interface OfflineState {
  readonly offline: NewerVersionState;
}
