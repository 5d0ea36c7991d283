import type { Chart } from '../chart/chart';
import { barOf, chartOfBars } from '../chart/excerpt';
import { homeChord } from '../chart/home-chord';
import { inEndKey } from '../chart/key-at';
import { romanChord } from '../chart/roman';
import { type BarShape, PLAIN_SHAPE } from '../players/passage';
import type { Chord } from '../theory/chord';
import type { Plan } from './program';

/** Bars and what the band does in them. */
export interface ShapedChart {
  readonly chart: Chart;
  readonly shapes: readonly BarShape[];
}

/** The dominant seventh that leads to a chart's beginning. */
export const dominant = (chart: Chart): Chord => romanChord('V7', chart.tonic);

/** A bar pattern in the chart's own beats: a short hit where the bar starts, a held one where its second chord does, on beat `second` from 0. */
const hitsAtChords = (beats: number, second: number): string =>
  Array.from({ length: beats }, (_, beat) => (beat === 0 ? 'x' : beat === second ? 'h' : '.')).join(' ');

/**
 * Replaces the last two bars of a last chorus: home, then the five chord and its neighbour a half step above home
 * (`cadence`), home and the five chord (`held`), or home and a last stroke (`stop`). Common practice, no source.
 */
export const closeChorus = ({ chart, shapes }: ShapedChart, ending: Plan['ending']): ShapedChart => {
  const { beats } = chart.meter;
  const end = inEndKey(chart);
  const home = barOf(chart, [homeChord(end)], [beats]);
  const half = Math.ceil(beats / 2);
  const lastBar = {
    cadence: barOf(chart, [dominant(end), romanChord('bII7', end.tonic)], [half, beats - half]),
    held: barOf(chart, [dominant(end)], [beats]),
    stop: home,
  }[ending];
  const replaced = chart.bars.length > 1 ? [home, lastBar] : [lastBar];
  const bars = [...chart.bars.slice(0, -replaced.length), ...replaced];
  const hits = ending === 'cadence' ? hitsAtChords(beats, half) : 'x';
  const closing = shapes.map((shape, bar): BarShape => {
    if (bar < bars.length - 2) return shape;
    if (bar === bars.length - 2)
      return {
        ...shape,
        bass: 'play',
        chords: 'play',
        drums: 'time',
        fill: ending === 'stop' ? 'beat' : 'none',
      };
    if (ending === 'held') return { ...shape, bass: 'play', chords: 'play', drums: 'time', fill: 'half' };
    return {
      ...shape,
      bass: 'hits',
      chords: 'hits',
      drums: 'hits',
      hits,
      fill: 'none',
      crash: false,
      gain: 1,
    };
  });
  return { chart: chartOfBars(chart, bars), shapes: closing };
};

/** One bar in which everybody lands on the home chord and holds it. */
export const finalChord = (chart: Chart): ShapedChart => ({
  chart: chartOfBars(chart, [barOf(chart, [homeChord(inEndKey(chart))], [chart.meter.beats])]),
  shapes: [{ ...PLAIN_SHAPE, bass: 'hits', chords: 'hits', drums: 'hits', hits: 'h', gain: 1.02 }],
});
