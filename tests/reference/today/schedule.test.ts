import { createEmptyCard, fsrs, type Grade } from 'ts-fsrs';
import { describe, expect, it } from 'vitest';
import { graded, type Memory, MOST_DAYS, recallOn } from '../../../src/core/today/schedule';

const START = 20_000;

/**
 * Published tests of ts-fsrs 5.4 (github.com/open-spaced-repetition/ts-fsrs, packages/fsrs/__tests__: FSRS-6 with the
 * usual weights): stability and difficulty after the first grade, by grade.
 */
const FIRST = [
  { grade: 1, stability: 0.212, difficulty: 6.4133 },
  { grade: 2, stability: 1.2931, difficulty: 5.11217071 },
  { grade: 3, stability: 2.3065, difficulty: 2.11810397 },
  { grade: 4, stability: 8.2956, difficulty: 1 },
] as const;

describe('the schedule', () => {
  it.each(FIRST)('begins as published for grade $grade', ({ grade, stability, difficulty }) => {
    const memory = graded(null, grade, START);
    expect(memory.stability).toBeCloseTo(stability, 6);
    expect(memory.difficulty).toBeCloseTo(difficulty, 6);
  });

  it('recalls as published: R(t) with S = 1 (the same tests, forgetting curve)', () => {
    const memory = { ...graded(null, 3, START), stability: 1 };
    const recalls = [0, 1, 2, 3].map((days) => recallOn(memory, START + days));
    for (const [i, recall] of [1, 0.9, 0.84588465, 0.8093881].entries())
      expect(recalls[i]).toBeCloseTo(recall, 6);
  });

  it('goes through six grades at day gaps 0, 0, 1, 3, 8, 21 to S 53.335106, D 6.3574867 (the same tests, without short-term steps)', () => {
    // The published path grades twice on one day, which the page does not: the library itself is held to it here.
    const scheduler = fsrs({ enable_short_term: false, enable_fuzz: false });
    let card = createEmptyCard(0);
    let day = 0;
    const gaps = [0, 0, 1, 3, 8, 21];
    const grades: readonly Grade[] = [1, 3, 3, 3, 3, 3];
    for (const [i, gap] of gaps.entries()) {
      day += gap;
      card = scheduler.next(card, day * 86_400_000, grades[i] ?? 3).card;
    }
    expect(card.stability).toBeCloseTo(53.335106, 4);
    expect(card.difficulty).toBeCloseTo(6.3574867, 4);
  });

  it('keeps to the stabilities of the formulas where it is practised on the days they say', () => {
    // Worked by hand from the published formulas and weights: good, good, good, hard after 2, 11 and 46 days.
    let memory: Memory = graded(null, 3, START);
    memory = graded(memory, 3, START + 2);
    expect(memory.stability).toBeCloseTo(10.9643, 3);
    memory = graded(memory, 3, START + 2 + 11);
    expect(memory.stability).toBeCloseTo(46.2802, 3);
    memory = graded(memory, 2, START + 2 + 11 + 46);
    expect(memory.stability).toBeCloseTo(116.3926, 2);
  });

  it('never leaves a new skill for more than two weeks, nor any for more than 45 days', () => {
    let memory: Memory = graded(null, 4, START);
    const gaps = [memory.due - memory.last];
    for (let i = 0; i < 8; i += 1) {
      memory = graded(memory, 4, memory.due);
      gaps.push(memory.due - memory.last);
    }
    expect(Math.max(...gaps.slice(0, 3))).toBe(MOST_DAYS.fresh);
    expect(Math.max(...gaps)).toBe(MOST_DAYS.secure);
    const lapsed = graded(memory, 1, memory.due);
    expect(lapsed).toMatchObject({ lapses: 1, passes: 0 });
    expect(lapsed.due - lapsed.last).toBeLessThanOrEqual(MOST_DAYS.fresh);
  });

  it('takes the first try of a day, and no other', () => {
    const memory = graded(null, 1, START);
    expect(graded(memory, 4, START)).toBe(memory);
  });
});
