/**
 * When something is to be practised again. The method is FSRS-6 (free spaced repetition scheduler, ts-fsrs) with one
 * grade a day: its weights were fitted to the recall of facts, so that what it says is capped here, and serves for the
 * order of what is due more than for the date.
 */
import { type CardInput, createEmptyCard, type FSRS, type Grade as FsrsGrade, fsrs, State } from 'ts-fsrs';

/** How a try was: 1 again, 2 hard, 3 good, 4 easy. Hard is a pass. */
const GRADES = [1, 2, 3, 4] as const;
export type Grade = (typeof GRADES)[number];

/** What is known of how well something sticks. Days are counted from 1970-01-01 by the player's own calendar. */
export interface Memory {
  /** Days until recall falls to 90 %. */
  readonly stability: number;
  /** 1 easy – 10 hard. */
  readonly difficulty: number;
  /** The day it was last graded. */
  readonly last: number;
  /** The day it is due. */
  readonly due: number;
  /** How often it was graded, and how often it was not there. */
  readonly times: number;
  readonly lapses: number;
  /** Passes since the last lapse. */
  readonly passes: number;
}

/** Most days between two practices: of a skill that is new, and of one that has passed often (by design, no source). */
export const MOST_DAYS = { fresh: 14, secure: 45 } as const;

/** Passes in a row from which a skill counts as secure. */
const SECURE = 4;

const DAY_MS = 86_400_000;

let scheduler: FSRS | null = null;
const method = (): FSRS => {
  scheduler ??= fsrs({ enable_fuzz: false, enable_short_term: false });
  return scheduler;
};

const cardOf = ({ stability, difficulty, last, due, times, lapses }: Memory): CardInput => ({
  due: due * DAY_MS,
  last_review: last * DAY_MS,
  elapsed_days: 0,
  scheduled_days: due - last,
  learning_steps: 0,
  stability,
  difficulty,
  reps: times,
  lapses,
  state: State.Review,
});

/**
 * What is known, as of a day. What was graded on a day that is still to come, by a clock that was wrong and not by a
 * journey to the west, is due at once: nobody would be asked for it again until that day.
 */
export const asOf = (memory: Memory, day: number): Memory =>
  memory.last > day + 1 ? { ...memory, last: day - 1, due: day } : memory;

/**
 * What is known after a try. A second try on the same day is practice and changes nothing.
 *
 * @example
 * graded(null, 3, 20_000).due // 20_003
 */
export const graded = (before: Memory | null, grade: Grade, day: number): Memory => {
  const memory = before === null ? null : asOf(before, day);
  if (memory !== null && memory.last >= day) return memory;
  const card = memory === null ? createEmptyCard(day * DAY_MS) : cardOf(memory);
  const next = method().next(card, day * DAY_MS, grade as FsrsGrade).card;
  const passes = grade === 1 ? 0 : (memory?.passes ?? 0) + 1;
  const most = passes >= SECURE ? MOST_DAYS.secure : MOST_DAYS.fresh;
  return {
    stability: next.stability,
    difficulty: next.difficulty,
    last: day,
    due: day + Math.max(1, Math.min(most, next.scheduled_days)),
    times: (memory?.times ?? 0) + 1,
    lapses: (memory?.lapses ?? 0) + (grade === 1 && memory !== null ? 1 : 0),
    passes,
  };
};

/** How likely something is still there on a day, 0–1: the least likely is practised first. */
export const recallOn = (memory: Memory, day: number): number =>
  method().forgetting_curve(Math.max(0, day - memory.last), memory.stability);
