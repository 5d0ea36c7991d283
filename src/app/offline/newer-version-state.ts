import type { Keeping } from '../../offline/offline';

/** How the program is kept for use without a network, and what becomes of a newer version of it. */
export interface NewerVersionState {
  /** `off` where nothing keeps it: a development server. */
  readonly keeping: Keeping | 'off';
  /** Whether a newer version lies ready. */
  readonly newer: boolean;
  /** Whether the player has asked for it. */
  readonly wanted: boolean;
}

/** How the program is kept, as the page shows it. */
export interface OfflineState {
  readonly offline: NewerVersionState;
}

/** Before anything was heard of a newer version. */
export const NO_NEWER: OfflineState = { offline: { keeping: 'off', newer: false, wanted: false } };
