import type { Bar, Chart } from '../chart/chart';
import { barOf, chartOfBars } from '../chart/excerpt';
import { playClick } from '../players/click';
import { type BarShape, PLAIN_SHAPE } from '../players/passage';
import { DRUM_KEYS } from '../score/drum-kit';
import { finishScore } from '../score/finish-score';
import { noteEvent } from '../score/note';
import type { NoteEvent, Score } from '../score/score';
import type { Chord } from '../theory/chord';
import { asTicks, type Ticks } from '../theory/units';

/** The drummer's sticks: every beat of the last bar, every other beat before (common practice, no source). */
const playSticks = (chart: Chart): readonly NoteEvent[] =>
  chart.bars.flatMap((bar, index) =>
    Array.from({ length: chart.meter.beats }, (_, beat) => beat)
      .filter((beat) => index === chart.bars.length - 1 || beat % 2 === 0)
      .map((beat) =>
        noteEvent('drums', {
          at: bar.at + beat * chart.meter.beatTicks,
          length: chart.meter.beatTicks / 8,
          pitch: DRUM_KEYS.stick,
          velocity: beat === 0 ? 92 : 84,
        }),
      ),
  );

/** A counted bar with a pick-up at its end, whose first chord is shown from the beginning of the bar. */
const leadingBar = (pickUp: Bar, length: Ticks): Bar => {
  const start = length - pickUp.length;
  const chords = pickUp.chords.map((span, i) => ({
    ...span,
    at: asTicks(i === 0 ? 0 : start + span.at),
    length: asTicks(span.length + (i === 0 ? start : 0)),
  }));
  return { at: asTicks(0), length, chords };
};

/**
 * Bars counted before the music: the chart shows the chord that comes.
 * @param pickUp what the last of them leads in with.
 */
export const countInChart = (chart: Chart, bars: number, coming: Chord, pickUp: Bar | null = null): Chart =>
  chartOfBars(
    chart,
    Array.from({ length: bars }, (_, i) => {
      const bar = barOf(chart, [coming], [chart.meter.beats]);
      return pickUp !== null && i === bars - 1 ? leadingBar(pickUp, bar.length) : bar;
    }),
  );

/** Bars of a count-in in which nobody plays but the band strikes the chords of a pick-up, at the end of the last. */
export const leadingShapes = ({ bars, meter }: Chart, pickUp: Bar): readonly BarShape[] => {
  const before = meter.beats - pickUp.length / meter.beatTicks;
  const begins = new Set(pickUp.chords.map(({ at }) => before + at / meter.beatTicks));
  const hits = Array.from({ length: meter.beats }, (_, beat) => (begins.has(beat) ? 'h' : '.')).join(' ');
  const silent = { ...PLAIN_SHAPE, bass: 'tacet', chords: 'tacet', drums: 'tacet' } as const;
  return bars.map((_, i) =>
    i === bars.length - 1 ? { ...silent, bass: 'hits', chords: 'hits', hits } : silent,
  );
};

/** A click on every beat, and the sticks with it, so that the count is heard while the click's fader is down. */
export const countInScore = (chart: Chart): Score =>
  finishScore(chart, [...playSticks(chart), ...playClick(chart)]);
