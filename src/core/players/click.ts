import type { Chart } from '../chart/chart';
import { noteEvent } from '../score/note';
import type { NoteEvent } from '../score/score';

/** High and low wood block (General MIDI percussion map). */
export const CLICK_KEYS = { accent: 76, beat: 77 } as const;

/** Where the click falls: on every beat, on the backbeats, on the last beat, on the first of every other bar. */
export const CLICKS = ['every beat', 'two and four', 'four', 'every other bar'] as const;
export type ClickPlace = (typeof CLICKS)[number];

const clicksOn = (place: ClickPlace, beat: number, beats: number, bar: number): boolean => {
  if (place === 'every beat') return true;
  if (place === 'four') return beat === beats - 1;
  if (place === 'two and four') return beat % 2 === 1 || (beats === 3 && beat === 2);
  return beat === 0 && bar % 2 === 0;
};

/**
 * A click on the beats of a chart, stronger on the first of the bar.
 * @param firstBar how many bars of the song came before the chart: every other bar counts on through the choruses.
 */
export const playClick = (
  chart: Chart,
  place: ClickPlace = 'every beat',
  firstBar = 0,
): readonly NoteEvent[] =>
  chart.bars.flatMap((bar, index) => {
    const beats = Math.max(1, Math.round(bar.length / chart.meter.beatTicks));
    return Array.from({ length: beats }, (_, beat) => beat)
      .filter((beat) => clicksOn(place, beat, beats, firstBar + index))
      .map((beat) =>
        noteEvent('click', {
          at: bar.at + beat * chart.meter.beatTicks,
          length: chart.meter.beatTicks / 8,
          pitch: beat === 0 ? CLICK_KEYS.accent : CLICK_KEYS.beat,
          velocity: beat === 0 ? 110 : 84,
        }),
      );
  });
