import type { SelfMark } from '../../core/today/grade';
import type { PracticeItem } from '../../core/today/practice-item';
import type { TodayMinutes, TodayStep } from '../../core/today/today-plan';

/** Where today is. */
export interface TodayRun {
  readonly steps: readonly TodayStep[];
  /** From 0. */
  readonly index: number;
  /** The step’s time is over, and it waits for the player’s word. */
  readonly over: boolean;
  /** What the player, or the ear, made of the step; null before that. */
  readonly marked: SelfMark | null;
}

export interface TodayState {
  readonly today: {
    /** What is known of everything that was practised; empty until it was fetched. */
    readonly items: readonly PracticeItem[];
    readonly minutes: TodayMinutes;
    /** What today would be; empty until asked. */
    readonly plan: readonly TodayStep[];
    readonly run: TodayRun | null;
  };
}

/** Before anything was asked. */
export const NO_TODAY: TodayState['today'] = { items: [], minutes: 20, plan: [], run: null };
