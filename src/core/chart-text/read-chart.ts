import { barTicks, METERS } from '../chart/build-chart';
import type { Bar, Chart, ChordSpan, MeterName, Mode } from '../chart/chart';
import { romanChord } from '../chart/roman';
import type { NoteName } from '../theory/chord';
import { pitchClassOf } from '../theory/pitch';
import { asTicks } from '../theory/units';
import { lineUnparted, noBars, type Problem, textTooLong, tooManyBars } from './chart-problems';
import { type BarContext, readBar } from './read-bar';
import { type ReadChord, readChord } from './read-chord';
import { LONGEST_TEXT, playOut, scanChart, type WrittenBar } from './scan-chart';
import { isUnparted } from './unparted';

/**
 * Reads chords as musicians write them. Bars are parted by `|` or by lines; a bar holds symbols or numerals that
 * share it on beats, `/` or `.` for a beat of the same chord, `/B` for a new bass under it, or `%` for the bar
 * before; `|:` and `:|` enclose what is played twice. Nothing typed is lost: `source` keeps it whole, and what is
 * not understood stays as text in its bar, is listed among the problems, and sounds as the chord before it.
 */

/** The longest chart. */
const MOST_BARS = 128;

/** What a text needs beside itself to become a chart. */
export interface ReadChartOptions {
  readonly tonic: NoteName;
  readonly mode: Mode;
  readonly meter: MeterName;
  readonly title: string;
}

/** A bar's text and how far it was understood. */
export interface ReadBar extends WrittenBar {
  readonly status: 'read' | Problem['kind'];
}

/** A text with the chart it stands for. */
export interface ChartReading {
  /** The text as typed. */
  readonly source: string;
  readonly chart: Chart;
  /** bars[i] is the text of chart.bars[i], repeats played out; bars past the end of the chart are only text. */
  readonly bars: readonly ReadBar[];
  /** In reading order. */
  readonly problems: readonly Problem[];
}

const byPlace = (a: Problem, b: Problem): number => a.line - b.line || a.column - b.column;

/** Bars that are played twice have their problems once. */
const distinct = (problems: readonly Problem[]): readonly Problem[] => [
  ...new Map(problems.map((each) => [`${each.line} ${each.column} ${each.what}`, each])).values(),
];

/** Lines of chords that nothing parts, unless something else is said of them already. */
const unpartedLines = (
  bars: readonly WrittenBar[],
  read: BarContext['read'],
  said: readonly Problem[],
): readonly Problem[] => {
  const places = new Set(said.map(({ line, column }) => `${line} ${column}`));
  return bars
    .slice(0, MOST_BARS)
    .filter((bar) => !places.has(`${bar.line} ${bar.column}`) && isUnparted(bar, read))
    .map((bar) => lineUnparted(bar, bar.words.length));
};

const statusOf = (problems: readonly Problem[]): ReadBar['status'] => {
  if (problems.some(({ kind }) => kind === 'unread')) return 'unread';
  return problems.length > 0 ? 'adjusted' : 'read';
};

interface BarsReading {
  readonly bars: readonly Bar[];
  readonly texts: readonly ReadBar[];
  readonly problems: readonly Problem[];
}

const readBars = (
  written: readonly WrittenBar[],
  context: Omit<BarContext, 'at' | 'before'>,
): BarsReading => {
  const length = barTicks(context.meter);
  const problems: Problem[] = [];
  const texts: ReadBar[] = [];
  let before: readonly ChordSpan[] | null = null;
  const bars = written.slice(0, MOST_BARS).map((bar, index): Bar => {
    const at = asTicks(index * length);
    const reading = readBar(bar, { ...context, before, at });
    problems.push(...reading.problems);
    texts.push({ ...bar, status: statusOf(reading.problems) });
    before = reading.spans;
    return { at, length, chords: reading.spans };
  });
  const past = written.slice(MOST_BARS).map((bar): ReadBar => ({ ...bar, status: 'unread' }));
  const [first] = past;
  if (first !== undefined) problems.push(tooManyBars(first, MOST_BARS));
  return { bars, texts: texts.concat(past), problems };
};

/** Reads chords in one key, each different one once. */
const chordReader = (tonic: NoteName): BarContext['read'] => {
  const met = new Map<string, ReadChord | null>();
  return (text) => {
    const known = met.get(text);
    const chord = known === undefined ? readChord(text, tonic) : known;
    met.set(text, chord);
    return chord;
  };
};

const readText = (source: string, context: Omit<BarContext, 'at' | 'before'>): BarsReading => {
  if (source.length > LONGEST_TEXT) {
    return { bars: [], texts: [], problems: [textTooLong(source.length, LONGEST_TEXT)] };
  }
  const played = playOut(scanChart(source));
  const read = readBars(played.bars, context);
  const empty = read.bars.length === 0 ? [noBars(context.home.symbol)] : [];
  const problems = [...played.problems, ...read.problems, ...empty];
  return { ...read, problems: [...problems, ...unpartedLines(played.bars, context.read, problems)] };
};

/**
 * Reads a text as a chart of 1 to 128 bars; one of more than `LONGEST_TEXT` is refused in words, and one bar of the
 * tonic sounds. Never throws on any text; throws RangeError when `tonic` is no note name, which is the program's
 * mistake.
 *
 * @example
 * const reading = readChart('| C7 | F7 Fo7 |', { tonic: 'C', mode: 'major', meter: '4/4', title: 'Two bars' });
 * reading.chart.bars[1].chords.map(({ chord }) => chord.symbol) // ['F7', 'Fdim7']
 * reading.problems // []
 */
export const readChart = (
  source: string,
  { tonic, mode, meter: meterName, title }: ReadChartOptions,
): ChartReading => {
  const meter = METERS[meterName];
  const length = barTicks(meter);
  const home = romanChord(mode === 'minor' ? 'i' : 'I', tonic, { sevenths: true });
  const read = readText(source, { tonic, meter, home, read: chordReader(tonic) });
  const silent: Bar = { at: asTicks(0), length, chords: [{ chord: home, at: asTicks(0), length }] };
  const bars = read.bars.length === 0 ? [silent] : read.bars;
  return {
    source,
    chart: {
      title,
      key: pitchClassOf(tonic),
      mode,
      tonic,
      meter,
      bars,
      length: asTicks(bars.length * length),
    },
    bars: read.texts,
    problems: distinct(read.problems).toSorted(byPlace),
  };
};
