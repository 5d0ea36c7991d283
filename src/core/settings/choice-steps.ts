import type { Settings } from './settings';

/** One choice. */
export interface ChoiceStep {
  /** What was chosen, as it follows a verb: `tempo`. */
  readonly name: string;
  readonly from: Settings;
  readonly to: Settings;
}

/** Oldest first in `past`, next to redo first in `future`. */
export interface ChoiceHistory {
  readonly past: readonly ChoiceStep[];
  readonly future: readonly ChoiceStep[];
}

/** Nothing to undo. */
export const NO_CHOICES: ChoiceHistory = { past: [], future: [] };
