import type { Cue, WarmUpStep } from '../../core/practice/warm-up-step';
import type { Tune } from '../../core/song/tune';

/** Where a warm-up is. */
export interface WarmUpState {
  readonly step: WarmUpStep;
  /** From 1. */
  readonly number: number;
  readonly of: number;
  /** What to do now; null before the first cue and while resting. */
  readonly cue: Cue | null;
}

/** The warm-up, as the page shows it. */
export interface WarmingUp {
  /** Where the warm-up is; `null` when none runs. */
  readonly warmUp: WarmUpState | null;
  /** What the warm-up plays in place of the song. */
  readonly exercise: Tune | null;
}

/** Before a warm-up has begun. */
export const NO_WARM_UP: WarmingUp = { warmUp: null, exercise: null };
