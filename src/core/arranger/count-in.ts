import type { Chart } from '../chart/chart';
import { barOf, chartOfBars } from '../chart/excerpt';
import { playClick } from '../players/click';
import { DRUM_KEYS } from '../score/drum-kit';
import { finishScore } from '../score/finish-score';
import { noteEvent } from '../score/note';
import type { NoteEvent, Score } from '../score/score';
import type { Chord } from '../theory/chord';

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

/** Bars counted before the music: the chart shows the chord that comes. */
export const countInChart = (chart: Chart, bars: number, coming: Chord): Chart =>
  chartOfBars(
    chart,
    Array.from({ length: bars }, () => barOf(chart, [coming], [chart.meter.beats])),
  );

/** A click on every beat, and the sticks with it, so that the count is heard while the click's fader is down. */
export const countInScore = (chart: Chart): Score =>
  finishScore(chart, [...playSticks(chart), ...playClick(chart)]);
