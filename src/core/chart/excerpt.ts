import type { Chord } from '../theory/chord';
import { asTicks } from '../theory/units';
import type { Bar, Chart } from './chart';

const moveBar = (bar: Bar, at: number): Bar => ({
  ...bar,
  at: asTicks(at),
  chords: bar.chords.map((span) => ({ ...span, at: asTicks(span.at - bar.at + at) })),
});

/** A chart of the given bars, laid end to end from tick 0. Throws RangeError without bars. */
export const chartOfBars = (chart: Chart, bars: readonly Bar[]): Chart => {
  if (bars.length === 0) throw new RangeError('A chart needs 1 bar or more, got 0');
  let at = 0;
  const laid = bars.map((bar) => {
    const moved = moveBar(bar, at);
    at += bar.length;
    return moved;
  });
  return { ...chart, bars: laid, length: asTicks(at) };
};

/** Bars `from` up to, not including, `to` of a chart, from tick 0. Throws RangeError when none are left. */
export const excerpt = (chart: Chart, from: number, to: number): Chart =>
  chartOfBars(chart, chart.bars.slice(from, to));

/** One bar of the chart's meter with these chords, each `beats[i]` beats long. */
export const barOf = (chart: Chart, chords: readonly Chord[], beats: readonly number[]): Bar => {
  let at = 0;
  const spans = chords.map((chord, i) => {
    const length = (beats[i] ?? chart.meter.beats) * chart.meter.beatTicks;
    const span = { chord, at: asTicks(at), length: asTicks(length) };
    at += length;
    return span;
  });
  return { at: asTicks(0), length: asTicks(at), chords: spans };
};
