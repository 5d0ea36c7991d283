import type { Tuning } from '../../core/harp/harp';
import type { OwnedHarp } from '../../core/harp/harp-case';
import type { Notice } from './notice';

/** What the player owns and what there is to say about keeping it. */
export interface KeepingState {
  readonly notices: readonly Notice[];
  readonly harpCase: readonly OwnedHarp[];
  readonly ownTunings: readonly Tuning[];
}
