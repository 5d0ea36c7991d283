import { buildChart, splitBar } from '../chart/build-chart';
import type { Bar, BarKey, Chart, ChordSpan, Meter } from '../chart/chart';
import type { FormId } from '../chart/forms';
import type { Chord, NoteName } from '../theory/chord';
import { pitchClassOf } from '../theory/pitch';

/** How chords are written. */
export type ChordStyle = 'symbols' | 'numerals';

const BARS_A_LINE = 4;

/** Plain numerals read as sevenths, so a plain triad needs its own word. */
const numeralText = ({ roman, quality }: Chord): string => {
  if (quality !== '' && quality !== 'm') return roman;
  const [, numeral = roman, bass = ''] = /^([#b]*[IViv]+)(?:maj|m)?(\/.*)?$/.exec(roman) ?? [];
  return `${numeral}${quality === 'm' ? 'm' : 'maj'}${bass}`;
};

const chordText = ({ chord, band }: ChordSpan, style: ChordStyle): string => {
  if (band === 'rest') return 'N.C.';
  return (style === 'symbols' ? chord.symbol : numeralText(chord)) + (band === 'stop' ? '!' : '');
};

/** Share counts to try, the ones that read most plainly first: the whole, the halves, beats, then the rest. */
const shareCounts = (meter: Meter, chords: number): readonly number[] => {
  const most = (meter.beats * meter.beatTicks) / 120;
  const counts = Array.from({ length: most }, (_, i) => i + 1).filter((count) => count >= chords);
  const plain = (count: number): boolean => meter.beats % count === 0;
  return [...counts.filter(plain), ...counts.filter((count) => !plain(count))];
};

/** How many shares each chord takes when the bar is cut in `count`, or null where the cuts do not meet. */
const sharesOf = (bar: Bar, meter: Meter, count: number): readonly number[] | null => {
  const starts = [0];
  for (const length of splitBar(meter, count)) starts.push((starts.at(-1) ?? 0) + length);
  const cuts = [...bar.chords.map(({ at }) => at - bar.at), bar.length].map((at) => starts.indexOf(at));
  if (cuts.includes(-1)) return null;
  return bar.chords.map((_, i) => (cuts[i + 1] ?? 0) - (cuts[i] ?? 0));
};

/** A pick-up as the line that says it: a chord or `/` a beat. */
const pickUpText = ({ chords }: Bar, { beatTicks }: Meter, style: ChordStyle): string =>
  `Pick-up: ${chords.map((span) => chordText(span, style) + ' /'.repeat(span.length / beatTicks - 1)).join(' ')}`;

/** One bar as text: its chords alone where they share it evenly, otherwise with `/` for each further beat. */
const barText = (bar: Bar, meter: Meter, style: ChordStyle): string => {
  // Numerals of a section in a key of its own would be read in that key.
  const names = bar.chords.map((span) => chordText(span, bar.key === undefined ? style : 'symbols'));
  for (const count of shareCounts(meter, names.length)) {
    const shares = sharesOf(bar, meter, count);
    if (shares !== null) return names.map((name, i) => name + ' /'.repeat((shares[i] ?? 1) - 1)).join(' ');
  }
  throw new RangeError(`The chords of the bar at tick ${bar.at} do not lie on beats or their parts`);
};

const layLines = (bars: readonly string[]): string => {
  const lines: string[] = [];
  for (let i = 0; i < bars.length; i += BARS_A_LINE) {
    lines.push(`| ${bars.slice(i, i + BARS_A_LINE).join(' | ')} |`);
  }
  return lines.join('\n');
};

/** A section as it is played: its bars, with its name and key where the tune has sections. */
interface Stretch {
  readonly head: readonly string[];
  readonly bars: Bar[];
}

const keyText = ({ tonic, mode }: BarKey): string => `Key: ${tonic}${mode === 'minor' ? 'm' : ''}`;

const sameKey = (a: BarKey | undefined, b: BarKey | undefined): boolean =>
  a?.tonic === b?.tonic && a?.mode === b?.mode;

/** Parts the bars where a section begins, or another key. */
const stretchesOf = ({ bars, tonic, mode }: Chart): readonly Stretch[] => {
  const stretches: Stretch[] = [];
  let before: Bar | null = null;
  for (const bar of bars) {
    const begins = bar.place !== undefined && (before === null || bar.place.bar === 0);
    const label = begins && bar.place !== undefined ? [`[${bar.place.section}]`] : [];
    const known = begins ? undefined : before?.key;
    const key = sameKey(bar.key, known) ? [] : [keyText(bar.key ?? { tonic, mode })];
    if (before === null || label.length + key.length > 0)
      stretches.push({ head: [...label, ...key], bars: [] });
    stretches.at(-1)?.bars.push(bar);
    before = bar;
  }
  return stretches;
};

/**
 * A chart as text, four bars a line, that reads back as the same chart: bars as they are played, under the names and
 * keys of their sections. Throws RangeError where chords change off the beats' even parts, which no chart of this
 * program does.
 */
export const printChart = (chart: Chart, style: ChordStyle = 'symbols'): string =>
  [
    ...(chart.pickUp === undefined ? [] : [pickUpText(chart.pickUp, chart.meter, style)]),
    ...stretchesOf(chart).flatMap(({ head, bars }) => [
      ...head,
      layLines(bars.map((bar) => barText(bar, chart.meter, style))),
    ]),
  ].join('\n');

/** A built-in form on a tonic as text to start an own chart from. Throws RangeError when it is no note name. */
export const formAsText = (form: FormId, tonic: NoteName, style: ChordStyle = 'symbols'): string =>
  printChart(buildChart({ form, key: pitchClassOf(tonic), meter: '4/4', tonic }), style);
