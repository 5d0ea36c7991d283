import type { Plan, Program } from '../../src/core/arranger/program';
import { buildChart } from '../../src/core/chart/build-chart';
import type { Chart, MeterName } from '../../src/core/chart/chart';
import type { FormId } from '../../src/core/chart/forms';
import { type FeelId, feelOf } from '../../src/core/feels/feels';
import type { Style } from '../../src/core/players/style';
import { asBpm, asPitchClass } from '../../src/core/theory/units';

/** A chart of a form; key as a pitch class, 7 = G. */
export const testChart = (form: FormId = 'standard-turnaround', key = 7, meter: MeterName = '4/4'): Chart =>
  buildChart({ form, key: asPitchClass(key), meter });

/** A style with the feel's own instruments. */
export const testStyle = (feel: FeelId, changes: Partial<Style> = {}): Style => ({
  feel,
  bass: feelOf(feel).bass,
  chords: feelOf(feel).chords,
  second: 'none',
  kit: feelOf(feel).kit,
  swing: 'feel',
  push: {},
  time: 'usual',
  stopTime: 'off',
  leaveRoom: true,
  seed: 1,
  ...changes,
});

/** A plain plan: no count-in, no intro, endless steady choruses. */
export const testPlan = (changes: Partial<Plan> = {}): Plan => ({
  countInBars: 0,
  intro: 'none',
  choruses: null,
  arc: 'steady',
  dynamics: 'lively',
  turnarounds: 'as written',
  ending: 'cadence',
  ritard: false,
  repeat: null,
  countBetween: false,
  keys: { kind: 'same' },
  tempo: { kind: 'fixed' },
  click: 'every beat',
  dropOut: null,
  sounding: 'band',
  ...changes,
});

/** A program in the feel's own meter at its usual tempo. */
export const testProgram = (
  feel: FeelId,
  changes: {
    readonly chart?: Chart;
    readonly style?: Partial<Style>;
    readonly plan?: Partial<Plan>;
    readonly tempo?: number;
  } = {},
): Program => ({
  chart: changes.chart ?? testChart('standard-turnaround', 7, feelOf(feel).meter ?? '4/4'),
  style: testStyle(feel, changes.style),
  tempo: asBpm(changes.tempo ?? feelOf(feel).tempo.usual),
  plan: testPlan(changes.plan),
});

/** What a chart's chords sound, bar by bar: where, how long, over which bass and with which pitch classes. */
export const pitchesOf = (chart: Chart): unknown =>
  chart.bars.map((bar) =>
    bar.chords.map(({ chord, at, length }) => [
      at,
      length,
      chord.bass,
      chord.tones.map((tone) => tone.pitchClass),
    ]),
  );

/** A chart of the player's own, as it is kept. */
export const OWN_CHART = {
  id: 'chart-1',
  name: 'Ferry',
  text: '| C7 | F7 |',
  tonic: 'C',
  mode: 'major',
  meter: '4/4',
} as const;
