import fc from 'fast-check';
import type { Plan, Program } from '../../src/core/arranger/program';
import { buildChart } from '../../src/core/chart/build-chart';
import type { Chart } from '../../src/core/chart/chart';
import { FORM_IDS } from '../../src/core/chart/forms';
import { FEEL_IDS, feelOf } from '../../src/core/feels/feels';
import type { Style } from '../../src/core/players/style';
import type { ChordVoice, Kit } from '../../src/core/score/voices';
import { asPitchClass } from '../../src/core/theory/units';
import { testChart, testProgram } from './test-charts';

const anyStyle = fc.record({
  seed: fc.nat(1_000_000),
  chords: fc.constantFrom<ChordVoice>('piano', 'electric-piano', 'organ', 'guitar'),
  second: fc.constantFrom<Style['second']>('none', 'organ', 'guitar'),
  kit: fc.constantFrom<Kit>('sticks', 'brushes'),
  swing: fc.constantFrom<Style['swing']>('feel', 'by tempo', 'hard ride', 1, 1.5, 3.5),
  leaveRoom: fc.boolean(),
  time: fc.constantFrom<Style['time']>('usual', 'usual', 'half-time', 'double-time'),
});

/** Programs over every form, key, feel, meter, instrument and seed, with a plan of the given kind. */
export const anyProgram = (
  plan: fc.Arbitrary<Partial<Plan>>,
  style: Partial<Style> = {},
): fc.Arbitrary<Program> =>
  fc
    .record({
      feel: fc.constantFrom(...FEEL_IDS),
      form: fc.constantFrom(...FORM_IDS),
      key: fc.integer({ min: 0, max: 11 }),
      meter: fc.constantFrom('4/4', '4/4', '3/4', '12/8', '6/8'),
      style: anyStyle,
      tempo: fc.integer({ min: 40, max: 280 }),
      plan,
    })
    .map(({ feel, form, key, meter, tempo, ...rest }) =>
      testProgram(feel, {
        chart: testChart(form, key, feelOf(feel).meter ?? meter),
        tempo,
        style: { ...rest.style, ...style },
        plan: rest.plan,
      }),
    );

/** Plans of every kind. */
export const anyPlan: fc.Arbitrary<Partial<Plan>> = fc.record({
  countInBars: fc.constantFrom(0, 1, 2),
  intro: fc.constantFrom('none', 'turnaround', 'pickup', 'drums'),
  choruses: fc.constantFrom(null, 1, 2, 3),
  arc: fc.constantFrom('steady', 'breathe', 'trade fours', 'trade twos'),
  dynamics: fc.constantFrom('lively', 'calm', 'building'),
  turnarounds: fc.constantFrom('varied', 'one', 'as written'),
  ending: fc.constantFrom('cadence', 'held', 'stop'),
  click: fc.constantFrom('every beat', 'two and four', 'four', 'every other bar'),
  ritard: fc.boolean(),
  repeat: fc.constantFrom(null, null, { from: 0, to: 0 }, { from: 2, to: 5 }),
  countBetween: fc.boolean(),
  keys: fc.constantFrom({ kind: 'same' }, { kind: 'fourths' }),
  dropOut: fc.constantFrom(null, null, { play: 3, rest: 2 }),
  sounding: fc.constantFrom('band', 'band', 'click', 'drums', 'bass'),
});

/** Plans under which the whole band plays every bar. */
export const fullBand: fc.Arbitrary<Partial<Plan>> = fc.record({
  dynamics: fc.constantFrom('lively', 'calm', 'building'),
  turnarounds: fc.constantFrom('varied', 'one', 'as written'),
  keys: fc.constantFrom({ kind: 'same' }, { kind: 'fourths' }),
});

/** Any built-in form in any key and meter. */
export const anyFormChart: fc.Arbitrary<Chart> = fc
  .record({
    form: fc.constantFrom(...FORM_IDS),
    key: fc.integer({ min: 0, max: 11 }).map(asPitchClass),
    meter: fc.constantFrom(...(['4/4', '3/4', '12/8', '6/8'] as const)),
  })
  .map(buildChart);
