import type { Fade } from '../../core/practice/fading';
import type { ChorusOutcome, LadderPlace } from '../../core/practice/tempo-ladder';

/** A chorus that is over. */
export interface PlayedChorus {
  /** From 0. */
  readonly number: number;
  /** Beats a minute. */
  readonly tempo: number;
  readonly outcome: ChorusOutcome;
  readonly bySelf: boolean;
}

/** What choruses come to: how far up the ladder, how much is hidden. */
export interface ChorusesState {
  readonly choruses: {
    /** The last whole chorus of this Play; null before one. */
    readonly last: PlayedChorus | null;
    readonly place: LadderPlace;
    readonly fade: Fade;
    /** Which tone of a chord goes first, from 0 for the root. */
    readonly tone: number;
  };
}

/** Before the first chorus. */
export const NO_CHORUSES: ChorusesState['choruses'] = {
  last: null,
  place: { tempo: 0, since: 0 },
  fade: 'nothing',
  tone: 0,
};
