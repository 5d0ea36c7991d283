import { asTicks } from '../theory/units';
import { compareEvents } from './finish-score';
import type { NoteEvent, PartId, Score } from './score';

/** Parts whose notes make no sense without their start. */
const STRUCK: ReadonlySet<PartId> = new Set(['drums', 'click']);

const cutEvent = (event: NoteEvent, from: number, to: number): readonly NoteEvent[] => {
  const end = Math.min(event.at + event.length, to);
  const at = Math.max(event.at, from);
  if (end <= at || event.at >= to) return [];
  if (event.at >= from) return [{ ...event, at: asTicks(at - from), length: asTicks(end - at) }];
  if (STRUCK.has(event.part)) return [];
  const { glideFrom: _, glideTicks: __, ...plain } = event;
  return [{ ...plain, at: asTicks(0), length: asTicks(end - at) }];
};

/**
 * The part of a score from one tick to another, starting at tick 0. Notes that reach over an edge are shortened to
 * it; drum and click strokes from before the start are left out. Throws RangeError unless 0 ≤ from < to ≤ length.
 */
export const sliceScore = (score: Score, from: number, to: number): Score => {
  if (!(from >= 0 && from < to && to <= score.length)) {
    throw new RangeError(`A slice needs 0 <= from < to <= ${score.length}, got ${from} to ${to}`);
  }
  return {
    length: asTicks(to - from),
    events: score.events.flatMap((event) => cutEvent(event, from, to)).sort(compareEvents),
  };
};
