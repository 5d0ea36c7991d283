import type { Chart } from '../chart/chart';
import { asTicks } from '../theory/units';
import { type NoteEvent, PART_IDS, type PartId, type Score } from './score';

/** The order of events in a score: time, then part, then pitch. */
export const compareEvents = (a: NoteEvent, b: NoteEvent): number =>
  a.at - b.at ||
  PART_IDS.indexOf(a.part) - PART_IDS.indexOf(b.part) ||
  a.pitch - b.pitch ||
  b.velocity - a.velocity;

const MONOPHONIC: ReadonlySet<PartId> = new Set(['bass', 'lead']);

/** What cannot sound together: one key of a part, or anything in a part that plays one note at a time. */
const voiceOf = (event: NoteEvent): string =>
  MONOPHONIC.has(event.part) ? event.part : `${event.part} ${event.pitch}`;

/** Cuts notes where the same voice strikes again; of two strokes at one time the louder stays. */
const withoutOverlaps = (sorted: readonly NoteEvent[]): readonly NoteEvent[] => {
  const latest = new Map<string, number>();
  const kept: NoteEvent[] = [];
  for (const event of sorted) {
    const voice = voiceOf(event);
    const index = latest.get(voice);
    const before = index === undefined ? undefined : kept[index];
    if (index !== undefined && before !== undefined) {
      if (before.at === event.at) {
        if (event.velocity > before.velocity) kept[index] = event;
        continue;
      }
      const room = event.at - before.at;
      if (before.length > room) kept[index] = { ...before, length: asTicks(room) };
    }
    latest.set(voice, kept.push(event) - 1);
  }
  return kept;
};

/** Turns loose events into a score as long as a chart: sorted, inside it, no voice overlapping itself. */
export const finishScore = (chart: Chart, events: readonly NoteEvent[]): Score => {
  const inside = events
    .filter((event) => event.at >= 0 && event.at < chart.length)
    .map((event) =>
      event.at + event.length > chart.length ? { ...event, length: asTicks(chart.length - event.at) } : event,
    );
  return {
    length: chart.length,
    events: withoutOverlaps(inside.sort(compareEvents)).toSorted(compareEvents),
  };
};

/** A score with more notes in it, finished again. */
export const addNotes = (chart: Chart, score: Score, notes: readonly NoteEvent[]): Score =>
  notes.length === 0 ? score : finishScore(chart, [...score.events, ...notes]);
