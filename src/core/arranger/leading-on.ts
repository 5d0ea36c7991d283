import type { Chart, ChordSpan } from '../chart/chart';
import type { Chord } from '../theory/chord';
import { asTicks } from '../theory/units';
import { dominant } from './closing';

/** Steps above the key of what leads back home: the five chord, and the chord a half step above home. */
const LEADING = [7, 1];

const leadsHome = (chart: Chart, { root }: Chord): boolean => LEADING.includes((root - chart.key + 12) % 12);

/** A chord for half of its room, and another one for the rest. */
const halved = (span: ChordSpan, then: Chord, beatTicks: number): readonly ChordSpan[] => {
  const first = Math.ceil(span.length / beatTicks / 2) * beatTicks;
  return [
    { ...span, length: asTicks(first) },
    { ...span, chord: then, at: asTicks(span.at + first), length: asTicks(span.length - first) },
  ];
};

/**
 * A chorus before one in another key: what led back to its own beginning leads into the new key, by that key’s
 * dominant seventh (common practice, no source). A last bar of home alone gives half of itself to it, unless the chart
 * is to stay `asWritten`.
 *
 * @example
 * const inG = buildChart({ form: 'quick-change-turnaround', key: 7, meter: '4/4' });
 * const inD = buildChart({ form: 'quick-change-turnaround', key: 2, meter: '4/4' });
 * leadingOn(inG, inD, true).bars.at(-1).chords.at(-1).chord.symbol // 'A7'
 */
export const leadingOn = (chart: Chart, next: Chart, asWritten: boolean): Chart => {
  const bar = chart.bars.at(-1);
  const span = bar?.chords.at(-1);
  if (next.key === chart.key || bar === undefined || span === undefined) return chart;
  const then = dominant(next);
  if (span.chord.symbol === then.symbol) return chart;
  const home = leadsHome(chart, span.chord);
  if (!home && (asWritten || span.length < 2 * chart.meter.beatTicks)) return chart;
  const spans = home ? [{ ...span, chord: then }] : halved(span, then, chart.meter.beatTicks);
  const chords = [...bar.chords.slice(0, -1), ...spans];
  return { ...chart, bars: [...chart.bars.slice(0, -1), { ...bar, chords }] };
};

/** Where in its last bar a chart that leads on leaves the one it was made of, in ticks; null where it does not. */
export const changedFrom = (before: Chart, after: Chart): number | null => {
  const kept = before.bars.at(-1)?.chords ?? [];
  const changed = after.bars.at(-1)?.chords.find(({ chord }, i) => chord.symbol !== kept[i]?.chord.symbol);
  return changed?.at ?? null;
};
