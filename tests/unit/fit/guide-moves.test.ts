import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { fitChart } from '../../../src/core/fit/fit';
import { guideMoves } from '../../../src/core/fit/guide-moves';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { RICHTER } from '../../../src/core/harp/tunings';
import { guideTones } from '../../../src/core/theory/chords';
import { PITCH_CLASSES } from '../../../src/core/theory/pitch';
import { asPitchClass, type PitchClass } from '../../../src/core/theory/units';

const HARP = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

const chordsOf = (form: (typeof FORM_IDS)[number], key: PitchClass) =>
  fitChart({
    chart: buildChart({ form, key, meter: '4/4' }),
    harp: HARP,
    technique: { drawBends: true, blowBends: true, overbends: false, off: [] },
  }).bars.flatMap(({ chords }) => chords);

describe('the moves of thirds and sevenths', () => {
  // A blues in G on a C harp. Between dominant sevenths a fifth apart the third falls to the seventh and the seventh to the
  // third, by half steps (common practice, no source); B and F are 3 and 5 draw, B flat and E 3 draw bent and 5 blow.
  it.each([
    [4, ["3D>3D' -1", '5D>5B -1']],
    [6, ['5B>5D 1', "3D'>3D 1"]],
    [8, ['3D>4B 1', "2D''>2D' 1"]],
    [9, ["2D'>2B -2", '1B>1B 0']],
    // The same chord goes on.
    [2, []],
  ])('after bar %i go by the smallest step, on the easiest holes', (bar, moves) => {
    const chords = chordsOf('standard', asPitchClass(7));
    const [before, after] = chords.slice(bar - 1, bar + 1);
    if (before === undefined || after === undefined) throw new Error('The form is shorter');
    expect(guideMoves(before, after).map(({ from, to, step }) => `${from.id}>${to.id} ${step}`)).toEqual(
      moves,
    );
  });

  it('stay low where the top octave has the same more easily', () => {
    const [before, after] = chordsOf('early-twelve', asPitchClass(0)).slice(3, 5);
    if (before === undefined || after === undefined) throw new Error('The form is shorter');
    expect(guideMoves(before, after).map(({ from, to }) => `${from.id}>${to.id}`)).toEqual([
      '5B>5D',
      "3D'>3D''",
    ]);
  });

  it('are steps from a guide tone to a tone of the next chord, in every form and key', () => {
    for (const form of FORM_IDS)
      for (const key of PITCH_CLASSES.filter((each) => each % 5 === 0)) {
        const chords = chordsOf(form, key);
        for (const [i, after] of chords.slice(1).entries()) {
          const before = chords[i];
          if (before === undefined) continue;
          const guides = guideTones(before.chord).map(({ degree }) => degree);
          for (const { from, to, step } of guideMoves(before, after)) {
            expect(guides).toContain(from.degree);
            expect([to.role, to.pitch - from.pitch]).toEqual(['chord', step]);
            expect(Math.abs(step)).toBeLessThanOrEqual(2);
          }
        }
      }
  });
});
