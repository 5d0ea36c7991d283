import type { Instruments } from '../../core/arranger/program';
import { lateOf, placingSpan } from '../../core/score/placing';
import type { NoteEvent, PartId } from '../../core/score/score';
import { elementAt } from '../../core/theory/element-at';
import { type Placement, tickAtTime, timeOfTick } from './timeline';

/** A note event with its times on the audio clock, in seconds. */
export interface ScheduledNote {
  readonly event: NoteEvent;
  readonly at: number;
  readonly until: number;
  /** Seconds of the sound already gone by at `at`: above 0 for a note entered in its middle. */
  readonly offset: number;
  readonly glideSeconds: number;
  /** Counts the strokes of one key within a section, for taking turns between recordings of it. */
  readonly stroke: number;
  /** Instruments of its own; those that play now when absent. */
  readonly instruments?: Instruments;
}

/** Seconds each part plays behind (+) or ahead of (−) the beat. */
export type Push = Readonly<Partial<Record<PartId, number>>>;

/** Parts whose notes are held: they are taken up again when music is entered in the middle of a note. */
const HELD: ReadonlySet<PartId> = new Set(['bass', 'chords', 'second', 'lead']);

/** True for parts whose notes are held, as opposed to struck. */
export const isHeld = (part: PartId): boolean => HELD.has(part);

/** How far each part plays ahead of the beat, from milliseconds to seconds. */
export const pushSeconds = (milliseconds: Push): Push =>
  Object.fromEntries(Object.entries(milliseconds).map(([part, value]) => [part, value / 1000]));

const strokesByEvents = new WeakMap<readonly NoteEvent[], readonly number[]>();

const strokesOf = (events: readonly NoteEvent[], first: number): readonly number[] => {
  const known = strokesByEvents.get(events);
  if (known) return known;
  const counts = new Map<string, number>();
  const strokes = events.map(({ part, pitch }) => {
    const key = `${part}/${pitch}`;
    const stroke = counts.get(key) ?? first;
    counts.set(key, stroke + 1);
    return stroke;
  });
  strokesByEvents.set(events, strokes);
  return strokes;
};

const schedule = (placement: Placement, index: number, push: Push): ScheduledNote => {
  const { instruments } = placement.section;
  const event = elementAt(placement.section.score.events, index);
  const beat = timeOfTick(placement, event.at);
  const own = lateOf(placement.section.placing, event) / 1000;
  // What plays ahead of its beat begins where the music is entered, not before.
  const placed = beat >= placement.from ? Math.max(own, placement.from - beat) : own;
  const late = (push[event.part] ?? 0) + placed;
  const at = beat + late;
  const glide = event.glideTicks ?? 0;
  return {
    event,
    at,
    until: timeOfTick(placement, event.at + event.length) + late,
    offset: 0,
    glideSeconds: glide > 0 ? timeOfTick(placement, event.at + glide) + late - at : 0,
    stroke: strokesOf(placement.section.score.events, placement.section.index)[index] ?? 0,
    ...(instruments === undefined ? {} : { instruments }),
  };
};

const firstEventFrom = (events: readonly NoteEvent[], ticks: number): number => {
  let low = 0;
  let high = events.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (elementAt(events, middle).at < ticks) low = middle + 1;
    else high = middle;
  }
  return low;
};

/** Notes of a placed section that start in `from` ≤ t < `to`, push included, in the order of the score. */
export const notesBetween = (
  placement: Placement,
  from: number,
  to: number,
  push: Push,
): readonly ScheduledNote[] => {
  const { events } = placement.section.score;
  const pushes = Object.values(push).map((value) => value ?? 0);
  const { low, high } = placingSpan(placement.section.placing);
  const start = tickAtTime(placement, from - Math.max(0, ...pushes) - high / 1000) - 1;
  const end = tickAtTime(placement, to - Math.min(0, ...pushes) - low / 1000) + 1;
  const notes: ScheduledNote[] = [];
  for (let index = firstEventFrom(events, start); index < events.length; index += 1) {
    if (elementAt(events, index).at > end) break;
    const note = schedule(placement, index, push);
    if (note.at >= from && note.at < to) notes.push(note);
  }
  return notes;
};

/** Held notes of a placed section that began before `at` and go on after it, ready to be entered there. */
export const notesAcross = (placement: Placement, at: number, push: Push): readonly ScheduledNote[] => {
  const { events } = placement.section.score;
  const notes: ScheduledNote[] = [];
  for (const [index, event] of events.entries()) {
    if (timeOfTick(placement, event.at) > at + 1) break;
    if (!isHeld(event.part)) continue;
    const note = schedule(placement, index, push);
    if (note.at < at && note.until > at) {
      const offset = at - note.at;
      notes.push({ ...note, at, offset, glideSeconds: Math.max(0, note.glideSeconds - offset) });
    }
  }
  return notes;
};

/** Every note of a placed section, without push of the player's. */
export const allNotes = (placement: Placement): readonly ScheduledNote[] =>
  placement.section.score.events.map((_, index) => schedule(placement, index, {}));
