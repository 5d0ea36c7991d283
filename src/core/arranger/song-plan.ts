import { transpose } from '../chart/build-chart';
import type { BarRange, Chart } from '../chart/chart';
import { onceBars } from '../chart/once';
import { asBpm, asPitchClass, type Bpm, type PitchClass } from '../theory/units';
import type { Plan, Program } from './program';
import { type TurnaroundChoice, turnedAround } from './turnarounds';

/** What one section of a song is. */
export type Slot =
  | { readonly kind: 'count-in'; readonly chorus: number; readonly bars: number }
  | { readonly kind: 'intro'; readonly chorus: 0 }
  | { readonly kind: 'chorus'; readonly chorus: number; readonly last: boolean }
  | { readonly kind: 'ending'; readonly chorus: number };

const wholeAtLeast = (value: number, low: number, name: string): number => {
  if (!Number.isInteger(value) || value < low) {
    throw new RangeError(`${name} must be a whole number of at least ${low}, got ${value}`);
  }
  return value;
};

/** A final chord of its own follows the last chorus, unless the song just stops or a range is practised. */
export const hasEnding = (plan: Plan): boolean => plan.repeat === null && plan.ending !== 'stop';

/**
 * The section at an index, or null after the end: count-in, intro, choruses (with a counted bar between passes of a
 * repeated range when asked), ending. Repeated ranges have neither intro nor ending. Throws RangeError on a
 * negative or broken index and on plans that count nothing.
 */
export const slotAt = (plan: Plan, index: number): Slot | null => {
  wholeAtLeast(index, 0, 'Section index');
  if (plan.choruses !== null) wholeAtLeast(plan.choruses, 1, 'Number of choruses');
  const countIn = plan.countInBars > 0 ? 1 : 0;
  const intro = plan.intro !== 'none' && plan.repeat === null ? 1 : 0;
  if (index < countIn) return { kind: 'count-in', chorus: 0, bars: plan.countInBars };
  if (index < countIn + intro) return { kind: 'intro', chorus: 0 };
  const between = plan.repeat !== null && plan.countBetween;
  const place = index - countIn - intro;
  const chorus = between ? Math.ceil(place / 2) : place;
  const total = plan.choruses ?? Number.POSITIVE_INFINITY;
  if (chorus > total || (chorus === total && (between || !hasEnding(plan)))) return null;
  if (chorus === total) return { kind: 'ending', chorus: total - 1 };
  if (between && place % 2 === 1) return { kind: 'count-in', chorus, bars: 1 };
  return { kind: 'chorus', chorus, last: chorus === total - 1 };
};

const towards = (from: number, target: number, step: number): number =>
  target >= from ? Math.min(target, from + step) : Math.max(target, from - step);

/** The tempo of a chorus by the tempo plan: a ramp steps every so many choruses and stops at the target. */
export const tempoOfChorus = ({ tempo: target, plan }: Program, chorus: number): Bpm => {
  const { tempo } = plan;
  if (tempo.kind === 'alternate') return chorus % 2 === 0 ? tempo.slow : target;
  if (tempo.kind === 'fixed') return target;
  const steps = Math.floor(chorus / wholeAtLeast(tempo.every, 1, 'Choruses between tempo steps'));
  return asBpm(towards(tempo.from, target, steps * Math.abs(tempo.step)));
};

/** The key of a chorus by the key plan: the chart's own, a fourth higher each time, or the next of a list. */
export const keyOfChorus = (chart: Chart, plan: Plan, chorus: number): PitchClass => {
  const { keys } = plan;
  if (keys.kind === 'fourths') return asPitchClass(chart.key + 5 * chorus);
  if (keys.kind === 'list') return keys.keys[chorus % keys.keys.length] ?? chart.key;
  return chart.key;
};

/** The whole chart in the key of a chorus. */
export const chartInKeyOf = ({ chart, plan }: Program, chorus: number): Chart => {
  const semitones = asPitchClass(keyOfChorus(chart, plan, chorus) - chart.key);
  return semitones === 0 ? chart : transpose(chart, semitones);
};

/** What decides how a program's choruses turn around. */
export const turnaroundChoice = ({ style, tempo, plan }: Program): TurnaroundChoice => ({
  style,
  tempo,
  turnarounds: plan.turnarounds,
});

/** The whole chart of a chorus: in its key, with its turnaround. */
export const chartOfChorus = (program: Program, chorus: number): Chart =>
  turnedAround(chartInKeyOf(program, chorus), turnaroundChoice(program), chorus);

/**
 * The bars a chorus plays: the repeated range, or all, after the first without the introduction. Throws RangeError when
 * the range leaves the chart.
 */
export const rangeOf = ({ chart, plan }: Pick<Program, 'chart' | 'plan'>, chorus: number): BarRange => {
  const range = plan.repeat ?? { from: chorus === 0 ? 0 : onceBars(chart), to: chart.bars.length - 1 };
  const fits = Number.isInteger(range.from) && Number.isInteger(range.to) && range.from >= 0;
  if (!fits || range.to < range.from || range.to >= chart.bars.length) {
    throw new RangeError(
      `Repeat needs 0 <= from <= to <= ${chart.bars.length - 1}, got ${range.from} to ${range.to}`,
    );
  }
  return range;
};
