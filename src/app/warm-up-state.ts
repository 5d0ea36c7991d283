import type { WarmUpStep } from '../core/practice/warm-up-step';

/** Where a warm-up is. */
export interface WarmUpState {
  readonly step: WarmUpStep;
  /** From 1. */
  readonly number: number;
  readonly of: number;
  /** What to do now, in a few words; empty before the first cue. */
  readonly cue: string;
}
