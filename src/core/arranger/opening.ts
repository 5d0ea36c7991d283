import type { Chart } from '../chart/chart';
import { barOf, chartOfBars, excerpt } from '../chart/excerpt';
import { phrasesOf } from '../chart/phrases';
import { type BarShape, PLAIN_SHAPE } from '../players/passage';
import { dominant, type ShapedChart } from './closing';
import type { Plan } from './program';

/** The last bars of a chorus, its final bar turned into the five chord where it would rest at home. */
const turnaround = (chart: Chart, count: number): Chart => {
  const tail = excerpt(chart, Math.max(0, chart.bars.length - count), chart.bars.length);
  const rests = tail.bars.at(-1)?.chords.at(-1)?.chord.root === chart.key;
  if (!rests) return tail;
  const five = barOf(chart, [dominant(chart)], [chart.meter.beats]);
  return chartOfBars(chart, [...tail.bars.slice(0, -1), five]);
};

const shapesFor = (bars: number, shape: Partial<BarShape>, last: Partial<BarShape>): readonly BarShape[] =>
  phrasesOf(Array.from({ length: bars }, () => ({}))).map((phrase, bar) => ({
    ...PLAIN_SHAPE,
    phrase,
    ...shape,
    ...(bar === bars - 1 ? last : {}),
  }));

/** Drums alone play four bars, two where bars are long: at this many beats a minute a bar of four lasts 2.4 s. */
const LONG_BAR_BPM = 100;

/**
 * An intro before the first chorus: four bars from the turnaround, a two-bar pickup, or drums alone (common
 * practice, no source).
 */
export const openingOf = (
  chart: Chart,
  intro: Exclude<Plan['intro'], 'none'>,
  tempo: number,
): ShapedChart => {
  if (intro === 'turnaround') {
    const bars = turnaround(chart, 4);
    return { chart: bars, shapes: shapesFor(bars.bars.length, { gain: 0.98 }, { fill: 'half' }) };
  }
  if (intro === 'pickup') {
    const bars = turnaround(chart, 2);
    const stabs = { bass: 'hits', chords: 'hits', hits: 'x. .x', level: 0 } as const;
    const shapes = shapesFor(bars.bars.length, stabs, { bass: 'play', fill: 'half', hits: 'x', level: 1 });
    return { chart: bars, shapes };
  }
  const count = tempo < LONG_BAR_BPM ? 2 : 4;
  const first = chart.bars[0];
  if (first === undefined) throw new RangeError('A chart needs 1 bar or more, got 0');
  const bars = chartOfBars(
    chart,
    Array.from({ length: count }, () => first),
  );
  return { chart: bars, shapes: shapesFor(count, { bass: 'tacet', chords: 'tacet' }, { fill: 'bar' }) };
};
