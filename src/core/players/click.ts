import type { Chart } from '../chart/chart';
import { noteEvent } from '../score/note';
import type { NoteEvent } from '../score/score';

/** High and low wood block (General MIDI percussion map). */
export const CLICK_KEYS = { accent: 76, beat: 77 } as const;

/** A click on every beat of a chart, stronger on the first of the bar. */
export const playClick = (chart: Chart): readonly NoteEvent[] =>
  chart.bars.flatMap((bar) =>
    Array.from({ length: Math.max(1, Math.round(bar.length / chart.meter.beatTicks)) }, (_, beat) =>
      noteEvent('click', {
        at: bar.at + beat * chart.meter.beatTicks,
        length: chart.meter.beatTicks / 8,
        pitch: beat === 0 ? CLICK_KEYS.accent : CLICK_KEYS.beat,
        velocity: beat === 0 ? 110 : 84,
      }),
    ),
  );
