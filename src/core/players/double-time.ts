import type { Bar, Chart } from '../chart/chart';
import type { BeatGrid } from '../score/grid';
import { asTicks } from '../theory/units';
import type { BarShape, Passage } from './passage';

/**
 * Double-time feel: bass, drums and chords play twice as fast over the same bars. To them every bar is two bars of beats
 * half as long, over chords that last twice as many of them (trade usage, no source).
 */

/** The two halves of a bar; a chord that lasts through the middle stands in both. */
const halvesOf = (bar: Bar): readonly Bar[] => {
  const length = bar.length / 2;
  return [0, 1].map((half) => {
    const from = bar.at + half * length;
    const chords = bar.chords.flatMap((span) => {
      const at = Math.max(span.at, from);
      const until = Math.min(span.at + span.length, from + length);
      return until > at ? [{ chord: span.chord, at: asTicks(at), length: asTicks(until - at) }] : [];
    });
    return { at: asTicks(from), length: asTicks(length), chords };
  });
};

/** A pattern of hits in beats half as long, as long as the bar: first its first half, then its second. */
const hitsOf = (hits: string, beats: number): readonly [string, string] => {
  const marks = hits.split(' ').flatMap((beat) => [beat[0] ?? '.', beat[1] ?? '.']);
  const all = Array.from({ length: 2 * beats }, (_, i) => marks[i] ?? '.');
  return [all.slice(0, beats).join(' '), all.slice(beats).join(' ')];
};

const shapesOf = (shape: BarShape, beats: number): readonly BarShape[] => {
  const [first, second] = hitsOf(shape.hits, beats);
  return [
    { ...shape, hits: first, fill: 'none' },
    { ...shape, hits: second, crash: false },
  ];
};

const halfGrid = (grid: BeatGrid): BeatGrid => ({ ...grid, beatTicks: grid.beatTicks / 2 });

const halfChart = (chart: Chart): Chart => ({
  ...chart,
  meter: { ...chart.meter, beatTicks: asTicks(chart.meter.beatTicks / 2) },
  bars: chart.bars.flatMap(halvesOf),
});

/** The passage as a band in double time sees it; its ticks are those of the passage. */
export const doubleTime = (passage: Passage): Passage => {
  const { grid, grids, chart, shapes } = passage;
  return {
    ...passage,
    chart: halfChart(chart),
    shapes: shapes.flatMap((shape) => shapesOf(shape, chart.meter.beats)),
    turnaround: null,
    grid: halfGrid(grid),
    grids: {
      drums: halfGrid(grids.drums),
      bass: halfGrid(grids.bass),
      chords: halfGrid(grids.chords),
      second: halfGrid(grids.second),
      lead: grids.lead,
    },
  };
};
