import type { Bar, Meter } from '../chart/chart';
import type { BarShape } from '../players/passage';
import type { ShapedChart } from './closing';

/** A short stroke of everybody on each beat where the chart has one, in a bar in which the band does nothing else. */
const strokesOf = (bar: Bar, meter: Meter): string | null => {
  const isPlain = bar.chords.some(({ band }) => band === undefined);
  const strokes = bar.chords.filter(({ band }) => band === 'stop').map(({ at }) => at - bar.at);
  if (isPlain || strokes.length === 0 || strokes.some((at) => at % meter.beatTicks !== 0)) return null;
  const beats = Array.from({ length: meter.beats }, (_, beat) => beat * meter.beatTicks);
  return beats.map((at) => (strokes.includes(at) ? 'x' : '.')).join(' ');
};

/**
 * Bars that the chart writes as strokes are played as such by the whole band, whatever the feel has there. A bar that
 * is played in part is left to the feel, and silenced where it rests (`withRests`).
 */
export const withWrittenStops = ({ chart, shapes }: ShapedChart): ShapedChart => ({
  chart,
  shapes: shapes.map((shape, index): BarShape => {
    const bar = chart.bars[index];
    const hits = bar === undefined ? null : strokesOf(bar, chart.meter);
    if (hits === null) return shape;
    return { ...shape, bass: 'hits', chords: 'hits', drums: 'hits', hits, fill: 'none', crash: false };
  }),
});

/**
 * Bars of hits in which the chord changes are struck where it does, or what the chart shows would be played by nobody:
 * a turnaround in stop-time. The drums' turns keep the stroke that hands over to them.
 */
export const withStruckChanges = ({ chart, shapes }: ShapedChart): ShapedChart => ({
  chart,
  shapes: shapes.map((shape, index): BarShape => {
    const { at: barAt = 0, chords = [] } = chart.bars[index] ?? {};
    const { beats, beatTicks } = chart.meter;
    if (shape.drums !== 'hits' || shape.chords !== 'hits' || chords.length < 2) return shape;
    const changes = new Set(chords.map(({ at }) => (at - barAt) / beatTicks));
    const hits = Array.from({ length: beats }, (_, beat) => (changes.has(beat) ? 'x' : '.')).join(' ');
    return { ...shape, hits };
  }),
});
