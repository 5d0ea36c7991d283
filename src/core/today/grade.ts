import type { Grade } from './schedule';

/** What came of practising something for a while. */
export interface Outcome {
  /** Share that was right, 0–1; what the player gave up on is 0. */
  readonly right: number;
  /** Whether it was played at the tempo asked for. */
  readonly atTempo: boolean;
  /** Whether tab was in sight, or it was heard first. */
  readonly aided: boolean;
  /** Whether the first try was as good as the rest. */
  readonly firstTry: boolean;
}

/** From these shares on it is hard, good, easy (by design, no source; practice is steered to 70–90 % success). */
const FROM = { hard: 0.6, good: 0.8, easy: 0.95 } as const;

/**
 * The grade of an outcome. Below six tenths it was not there yet; hard is a pass. Aid lowers a grade by one, but makes
 * no failure of a pass.
 */
export const gradeOf = ({ right, atTempo, aided, firstTry }: Outcome): Grade => {
  if (right < FROM.hard) return 1;
  if (right < FROM.good || !atTempo) return 2;
  const unaided: Grade = right >= FROM.easy && firstTry ? 4 : 3;
  return aided ? ((unaided - 1) as Grade) : unaided;
};

/** The player's own word for it. */
export const SELF_MARKS = ['clean', 'nearly', 'again'] as const;
export type SelfMark = (typeof SELF_MARKS)[number];

/** The grade of the player's own word: players overrate themselves (J. Voice 37(4), 2023, p. 633), so none is easy. */
export const selfGrade = (mark: SelfMark): Grade => ({ clean: 3, nearly: 2, again: 1 })[mark] as Grade;
