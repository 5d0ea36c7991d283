import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gradeOf, selfGrade } from '../../../src/core/today/grade';
import {
  type Exercise,
  itemId,
  type PracticeItem,
  readPracticeItem,
} from '../../../src/core/today/practice-item';
import { graded } from '../../../src/core/today/schedule';
import { dueItems, TODAY_MINUTES, todayPlan } from '../../../src/core/today/today-plan';
import { soakRuns } from '../../helpers/soak';

const DAY = 20_000;

const itemOf = (exercise: Exercise, grade: 1 | 2 | 3 | 4 | null, ago = 0): PracticeItem => ({
  id: itemId(exercise),
  name: itemId(exercise),
  exercise,
  memory: grade === null ? null : graded(null, grade, DAY - ago),
});
const tone = (degree: string): Exercise => ({ kind: 'tone', degree, roman: 'IV7' });
const phrase = (id: string): Exercise => ({ kind: 'phrase', phrase: id });

const anyItem = fc
  .tuple(fc.constantFrom('tone', 'phrase'), fc.nat(30), fc.constantFrom(1, 2, 3, 4, null), fc.nat(40))
  .map(([kind, id, grade, ago]) =>
    itemOf(kind === 'tone' ? tone(String(id)) : phrase(String(id)), grade as 1 | null, ago),
  );

describe('today', () => {
  it('is a warm-up, what is due with kinds in turn, one new thing and a song for joy', () => {
    const items = [
      itemOf(tone('3'), 1, 9),
      itemOf(tone('b7'), 1, 8),
      itemOf(phrase('a'), 1, 7),
      itemOf(phrase('b'), null),
      itemOf(phrase('c'), null),
    ];
    const steps = todayPlan({ minutes: 20, day: DAY, items, songs: ['s'], seed: 1 });
    expect(steps.map((step) => ('item' in step ? `${step.kind} ${step.item.id}` : step.kind))).toEqual([
      'warm-up',
      'due tone 3 IV7',
      'due phrase a',
      'due tone b7 IV7',
      'new phrase b',
      'rest',
      'joy',
    ]);
  });

  it('never lasts longer than was asked by more than a rest, has one new thing at most and nothing twice', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(anyItem, { selector: ({ id }) => id, maxLength: 30 }),
        fc.constantFrom(...TODAY_MINUTES),
        (items, minutes) => {
          const steps = todayPlan({ minutes, day: DAY, items, songs: [], seed: 3 });
          const seconds = steps.reduce((sum, step) => sum + step.seconds, 0);
          expect(seconds).toBeLessThanOrEqual(minutes * 60 + 60);
          expect(seconds).toBeGreaterThanOrEqual(minutes * 60 * 0.85);
          const ids = steps.flatMap((step) => ('item' in step ? [step.item.id] : []));
          expect(new Set(ids).size).toBe(ids.length);
          expect(steps.filter(({ kind }) => kind === 'new').length).toBeLessThanOrEqual(1);
          expect([steps[0]?.kind, steps.at(-1)?.kind]).toEqual(['warm-up', 'joy']);
        },
      ),
      { numRuns: soakRuns(200) },
    );
  });

  it('puts a rest in after a quarter of an hour', () => {
    const items = Array.from({ length: 20 }, (_, i) => itemOf(tone(String(i)), 1, 5));
    const steps = todayPlan({ minutes: 45, day: DAY, items, songs: [], seed: 3 });
    let since = 0;
    for (const { kind, seconds } of steps) {
      since = kind === 'rest' ? 0 : since + seconds;
      expect(since).toBeLessThanOrEqual(25 * 60);
    }
    expect(steps.some(({ kind }) => kind === 'rest')).toBe(true);
  });

  it('takes what is least likely to be still there first, and nothing that is not due', () => {
    const items = [itemOf(tone('a'), 3, 3), itemOf(tone('b'), 1, 9), itemOf(tone('c'), 4, 1)];
    expect(dueItems(items, DAY).map(({ id }) => id)).toEqual(['tone b IV7', 'tone a IV7']);
  });
});

describe('the grade of a try', () => {
  const whole = { right: 1, atTempo: true, aided: false, firstTry: true };
  it.each([
    [whole, 4],
    [{ ...whole, firstTry: false }, 3],
    [{ ...whole, right: 0.85 }, 3],
    [{ ...whole, right: 0.85, aided: true }, 2],
    [{ ...whole, atTempo: false }, 2],
    [{ ...whole, right: 0.7 }, 2],
    [{ ...whole, right: 0.59 }, 1],
  ] as const)('of %o is %i', (outcome, grade) => {
    expect(gradeOf(outcome)).toBe(grade);
  });

  it('of one’s own word is never the best', () => {
    expect((['clean', 'nearly', 'again'] as const).map(selfGrade)).toEqual([3, 2, 1]);
  });
});

describe('reading what was practised', () => {
  it('gives back what was written, and never throws', () => {
    const item = itemOf({ kind: 'bend', sound: "4D'", harpKind: 'C' }, 3);
    expect(readPracticeItem(JSON.parse(JSON.stringify(item)))).toEqual({ item, problems: [] });
    fc.assert(
      fc.property(fc.anything(), (value) => {
        expect(readPracticeItem(value).item).toBeNull();
        const mended = readPracticeItem({ name: 'a', exercise: tone('3'), memory: value });
        expect(mended.item?.id).toBe('tone 3 IV7');
      }),
      { numRuns: soakRuns(100) },
    );
  });
});

describe('a clock that was wrong', () => {
  it('keeps nothing from being asked for until its day: what it graded is due now, and graded anew', () => {
    const ahead = itemOf(tone('3'), 4, -9000);
    expect(dueItems([ahead], DAY)).toHaveLength(1);
    expect(graded(ahead.memory, 3, DAY)).toMatchObject({ last: DAY, times: 2 });
    expect(graded(ahead.memory, 3, DAY).due).toBeGreaterThan(DAY);
  });

  it('a day ahead is a journey to the west, where a day begins twice', () => {
    const tomorrow = itemOf(tone('3'), 3, -1);
    expect(dueItems([tomorrow], DAY)).toEqual([]);
    expect(graded(tomorrow.memory, 1, DAY)).toBe(tomorrow.memory);
  });

  it('before 1970 is read back as it was kept', () => {
    const early = { ...itemOf(tone('3'), 3), memory: graded(null, 3, -40) };
    expect(readPracticeItem(JSON.parse(JSON.stringify(early)))).toEqual({ item: early, problems: [] });
  });
});
