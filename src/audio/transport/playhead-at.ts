import type { Playhead } from '../../core/arranger/playhead';
import { barAt, barIndexAt, beatAt, placementAt, type Timeline, tickAtTime, timeOfTick } from './timeline';

/** Where in the music a moment of the audio clock is; null where none sounds. */
export const playheadAt = (timeline: Timeline, time: number): Playhead | null => {
  const placement = placementAt(timeline, time);
  if (placement === null) return null;
  const { section } = placement;
  const ticks = Math.max(0, tickAtTime(placement, time));
  const bar = barIndexAt(section, ticks);
  return { section, bar, beat: beatAt(section, bar, ticks), ticks };
};

/** Seconds of the audio clock at which the bar after the one heard at a time begins; null where none sounds. */
export const nextBarTime = (timeline: Timeline, time: number): number | null => {
  const placement = placementAt(timeline, time);
  if (placement === null) return null;
  const { section, until } = placement;
  const bar = barAt(section, Math.max(0, tickAtTime(placement, time)));
  return Math.min(until, timeOfTick(placement, bar.at + bar.length));
};
