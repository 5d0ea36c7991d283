import type { Bar, Chart } from '../chart/chart';
import { barOf, chartOfBars } from '../chart/excerpt';
import { romanChord } from '../chart/roman';
import { TURNAROUND_FIGURES, type TurnaroundFigure } from '../feels/turnaround-figures';
import { semitonesOf } from '../theory/degrees';

/** Which beats of four a shorter bar takes: it keeps the way out. */
const KEPT: Readonly<Record<number, readonly number[]>> = { 2: [0, 3], 3: [0, 1, 3], 4: [0, 1, 2, 3] };

const keptOf = <T>(beats: readonly T[], count: number): readonly T[] =>
  (KEPT[count] ?? []).flatMap((beat) => beats.slice(beat, beat + 1));

/** The numeral of each beat of a bar of a figure. */
const beatsOf = (text: string): readonly string[] => {
  const beats: string[] = [];
  for (const roman of text.split(' ')) beats.push(roman === '-' ? (beats.at(-1) ?? roman) : roman);
  return beats;
};

/** The figure's chords in a bar of a chart's meter: numerals, each with its beats. */
const spansOf = (text: string, count: number): readonly { roman: string; beats: number }[] => {
  const spans: { roman: string; beats: number }[] = [];
  for (const roman of keptOf(beatsOf(text), count)) {
    const last = spans.at(-1);
    if (last?.roman === roman) last.beats += 1;
    else spans.push({ roman, beats: 1 });
  }
  return spans;
};

/** The two bars of a figure in the key and meter of a chart; none in meters of other than 2 to 4 beats. */
const turnaroundBars = (chart: Chart, figure: TurnaroundFigure): readonly Bar[] =>
  figure.chords.flatMap((text) => {
    const spans = spansOf(text, chart.meter.beats);
    if (spans.length === 0) return [];
    const chords = spans.map(({ roman }) => romanChord(roman, chart.tonic));
    return [
      barOf(
        chart,
        chords,
        spans.map(({ beats }) => beats),
      ),
    ];
  });

/** The chart with a figure in place of its last two bars. */
export const withTurnaround = (chart: Chart, figure: TurnaroundFigure): Chart => {
  const bars = turnaroundBars(chart, figure);
  return bars.length === 2 ? chartOfBars(chart, [...chart.bars.slice(0, -2), ...bars]) : chart;
};

const printOf = (bars: readonly Bar[]): string =>
  bars
    .map(({ at, chords }) => chords.map((span) => `${span.chord.symbol}@${span.at - at}`).join(' '))
    .join('|');

/** What the bass plays under a turnaround: semitones above the key for every beat of its two bars. */
export interface TurnaroundLine {
  /** Index of its first bar. */
  readonly bar: number;
  readonly beats: readonly [readonly number[], readonly number[]];
}

const lineOf = (text: string, count: number): readonly number[] =>
  keptOf(text.split(' '), count).map((degree) => (degree === '1' ? 0 : semitonesOf(degree)));

/** The line that belongs to the last two bars of a chart where they are a turnaround known here; otherwise null. */
export const turnaroundLine = (chart: Chart): TurnaroundLine | null => {
  const bar = chart.bars.length - 2;
  if (bar < 0) return null;
  const print = printOf(chart.bars.slice(bar));
  const figure = TURNAROUND_FIGURES.find(
    (each) => each.mode === chart.mode && printOf(turnaroundBars(chart, each)) === print,
  );
  if (figure === undefined) return null;
  const { beats } = chart.meter;
  return { bar, beats: [lineOf(figure.bass[0], beats), lineOf(figure.bass[1], beats)] };
};
