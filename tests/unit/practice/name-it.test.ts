import { describe, expect, it } from 'vitest';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { DRILLS, type DrillSpec, drillQuestion } from '../../../src/core/practice/name-it';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { chartFor } from '../../../src/core/song/chosen-chart';
import { tuneFor } from '../../../src/core/song/tune';

const specOf = (drill: DrillSpec['drill'], formId = 'standard', position = 2): DrillSpec => {
  const settings = { ...DEFAULT_SETTINGS, formId, position };
  const { chart, fit } = tuneFor(settings, chartFor(settings, []));
  return { chart, fit, tabStyle: 'signs', drill, seed: 5 };
};

const questions = (spec: DrillSpec, count = 60) =>
  Array.from({ length: count }, (_, number) => drillQuestion(spec, number));

const answerTo = (drill: DrillSpec['drill'], text: RegExp) => {
  const found = questions(specOf(drill), 200).find((each) => text.test(each?.text ?? ''));
  return found?.answers[found.right];
};

describe('naming', () => {
  it('has the answers of the layout: holes of a C harp over a blues in G', () => {
    // Layout of a harp in C: blow C E G C E G C E G C, draw D G B D F A B D F A (Wikibooks, "Harmonica/Layouts").
    expect(answerTo('holes', /the 3 of G7/)).toBe('-3  -7');
    expect(answerTo('holes', /the R of C7/)).toBe('1  4  7  10');
    expect(answerTo('degree', /What is -4 over G7/)).toBe('5');
    expect(answerTo('degree', /What is -5 over G7/)).toBe('♭7');
    // Where a guide tone goes is a tone of the next chord.
    expect(answerTo('change', /^G7 goes to C7/)).toMatch(/, the (♭7|R|3|5)$/);
  });

  it('never has an answer twice, has the right one among them, and is the same again', () => {
    for (const drill of DRILLS)
      for (const formId of FORM_IDS)
        for (const each of questions(specOf(drill, formId), 12)) {
          if (each === null) continue;
          expect(new Set(each.answers).size).toBe(each.answers.length);
          expect(each.answers.length).toBeGreaterThan(1);
          expect(each.answers[each.right]).toBeTruthy();
        }
    expect(questions(specOf('change'))).toEqual(questions(specOf('change')));
  });

  it('asks something in every position of the usual harp', () => {
    for (let position = 1; position <= 12; position += 1)
      for (const drill of DRILLS)
        expect(questions(specOf(drill, 'standard', position), 8).some((each) => each !== null)).toBe(true);
  });
});
