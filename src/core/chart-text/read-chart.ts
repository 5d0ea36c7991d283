import { barTicks, METERS } from '../chart/build-chart';
import { type Bar, type BarKey, type Chart, type ChordSpan, type MeterName, MOST_BARS } from '../chart/chart';
import { romanChord } from '../chart/roman';
import { sectionKey } from '../chart/tonics';
import type { Chord, NoteName } from '../theory/chord';
import { type KeyMode, pitchClassOf } from '../theory/pitch';
import { asTicks } from '../theory/units';
import {
  lineUnparted,
  noBars,
  type Problem,
  type TextSpan,
  textTooLong,
  tooManyBars,
} from './chart-problems';
import { type ChartSays, keysInForce, readHeaders, SAYS_NOTHING } from './header-lines';
import { readPickUp } from './pick-up';
import { type PlayedBar, playOut } from './play-out';
import { type BarContext, readBar } from './read-bar';
import { chordInKey, type ReadChord, readChord } from './read-chord';
import { type Item, LONGEST_TEXT, scanChart, type WrittenBar } from './scan-chart';
import { isUnparted } from './unparted';

/**
 * Reads chords as musicians write them. Bars are parted by `|` or by lines; a bar holds symbols or numerals that
 * share it on beats, `/` or `.` for a beat of the same chord, `/B` for a new bass under it, or `%` for the bar
 * before; `N.C.` is a rest of the band, `!` a stroke and a rest. `|:` and `:|` enclose what is played twice, or as
 * often as `x3` behind it says; `[1` and `[2` are endings. `[A]` or `Verse:` begins a section, `Order:` says when each
 * is played; D.C., D.S., Fine and Coda work as on paper. `Title:`, `Key:`, `Meter:`, `Feel:` and `Tempo:` set what
 * they say, `Pick-up:` what is played before the first bar. Nothing typed is lost: `source` keeps it whole, and what is not understood stays as text in its bar, is
 * listed among the problems, and sounds as the chord before it.
 */

/** What a text needs beside itself to become a chart. */
export interface ReadChartOptions {
  readonly tonic: NoteName;
  readonly mode: KeyMode;
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
  /** Bars of the text that are never played. */
  readonly unplayed: readonly WrittenBar[];
  /** Text that is no bar: names of sections, endings, lines such as `Key: G`. */
  readonly signs: readonly TextSpan[];
  readonly says: ChartSays;
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

/** What all bars of a text are read against, and the key of each item's section where it has one of its own. */
interface TextContext extends Omit<BarContext, 'at' | 'before'> {
  readonly keys: readonly (BarKey | null)[];
  readonly readerIn: (tonic: NoteName) => BarContext['read'];
}

/** Chords read in another key, as numerals of the chart's. */
const inHomeKey = (spans: readonly ChordSpan[], tonic: NoteName): readonly ChordSpan[] =>
  spans.map((span) => ({ ...span, chord: chordInKey(span.chord, tonic) }));

const readBars = (played: readonly PlayedBar[], context: TextContext): BarsReading => {
  const length = barTicks(context.meter);
  const problems: Problem[] = [];
  const texts: ReadBar[] = [];
  let before: readonly ChordSpan[] | null = null;
  const bars = played.slice(0, MOST_BARS).map(({ bar, item, place }, index): Bar => {
    const at = asTicks(index * length);
    const key = context.keys[item] ?? null;
    const read = key === null ? context.read : context.readerIn(key.tonic);
    const reading = readBar(bar, { ...context, tonic: key?.tonic ?? context.tonic, read, before, at });
    problems.push(...reading.problems);
    texts.push({ ...bar, status: statusOf(reading.problems) });
    const chords = key === null ? reading.spans : inHomeKey(reading.spans, context.tonic);
    before = chords;
    return { at, length, chords, ...(place && { place }), ...(key && { key }) };
  });
  const past = played.slice(MOST_BARS).map(({ bar }): ReadBar => ({ ...bar, status: 'unread' }));
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

const chordReaders = (): ((tonic: NoteName) => BarContext['read']) => {
  const known = new Map<NoteName, BarContext['read']>();
  return (tonic) => {
    const read = known.get(tonic) ?? chordReader(tonic);
    known.set(tonic, read);
    return read;
  };
};

const spanOfItem = (item: Item): readonly TextSpan[] =>
  item.kind === 'bar' || item.kind === 'line' ? [] : [item.span];

type TextReading = Pick<ChartReading, 'unplayed' | 'signs' | 'says'> &
  BarsReading &
  Pick<ChartReading, 'chart'>;

/** A chart of the bars read, or of one bar of the tonic. */
const chartOf = (
  bars: readonly Bar[],
  { tonic, mode, meter: name, title }: ReadChartOptions,
  home: Chord,
): Chart => {
  const meter = METERS[name];
  const length = barTicks(meter);
  const silent: Bar = { at: asTicks(0), length, chords: [{ chord: home, at: asTicks(0), length }] };
  const laid = bars.length === 0 ? [silent] : bars;
  return {
    title,
    key: pitchClassOf(tonic),
    mode,
    tonic,
    meter,
    bars: laid,
    length: asTicks(laid.length * length),
  };
};

const homeOf = ({ tonic, mode }: Pick<ReadChartOptions, 'tonic' | 'mode'>): Chord =>
  romanChord(mode === 'minor' ? 'i' : 'I', tonic, { sevenths: true });

const readText = (source: string, given: ReadChartOptions): TextReading => {
  const items = scanChart(source);
  const { says, sectionKeys, problems: saying } = readHeaders(items);
  const options = {
    ...given,
    ...says.key,
    meter: says.meter ?? given.meter,
    title: says.title ?? given.title,
  };
  const { tonic, meter } = options;
  const home = homeOf(options);
  const readerIn = chordReaders();
  const read = readerIn(tonic);
  const keys = keysInForce(items, sectionKeys).map((key) =>
    key === null || (key.tonic === tonic && key.mode === options.mode) ? null : sectionKey(key, tonic),
  );
  const played = playOut(items);
  const context = { tonic, meter: METERS[meter], home, read, readerIn, keys };
  const reading = readBars(played.bars, context);
  const { pickUp, problems: leading } = readPickUp(items, context);
  const empty = reading.bars.length === 0 ? [noBars(home.symbol)] : [];
  const problems = [...saying, ...leading, ...played.problems, ...reading.problems, ...empty];
  const written = played.bars.map(({ bar }) => bar);
  return {
    ...reading,
    says,
    signs: items.flatMap(spanOfItem),
    unplayed: played.unplayed,
    chart: { ...chartOf(reading.bars, options, home), ...(pickUp && { pickUp }) },
    problems: [...problems, ...unpartedLines(written, read, problems)],
  };
};

/**
 * Reads a text as a chart of 1 to 256 bars; one of more than `LONGEST_TEXT` is refused in words, and one bar of the
 * tonic sounds. Never throws on any text; throws RangeError when `tonic` is no note name, which is the program's
 * mistake.
 *
 * @example
 * const reading = readChart('| C7 | F7 Fo7 |', { tonic: 'C', mode: 'major', meter: '4/4', title: 'Two bars' });
 * reading.chart.bars[1].chords.map(({ chord }) => chord.symbol) // ['F7', 'Fdim7']
 * reading.problems // []
 */
export const readChart = (source: string, options: ReadChartOptions): ChartReading => {
  const home = homeOf(options);
  if (source.length > LONGEST_TEXT) {
    return {
      source,
      chart: chartOf([], options, home),
      bars: [],
      unplayed: [],
      signs: [],
      says: SAYS_NOTHING,
      problems: [textTooLong(source.length, LONGEST_TEXT)],
    };
  }
  const { chart, texts, unplayed, signs, says, problems } = readText(source, options);
  return {
    source,
    chart,
    bars: texts,
    unplayed,
    signs,
    says,
    problems: distinct(problems).toSorted(byPlace),
  };
};
