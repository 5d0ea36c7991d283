import type { Section } from '../arranger/program';
import { lateOf } from '../score/placing';
import type { NoteEvent, PartId } from '../score/score';

/** A section at its place in the file. */
export interface PlacedSection {
  readonly section: Section;
  /** Ticks from the start of the file. */
  readonly at: number;
}

/** Sections end to end. */
export const placeSections = (sections: readonly Section[]): readonly PlacedSection[] => {
  let at = 0;
  return sections.map((section) => {
    const placed = { section, at };
    at += section.score.length;
    return placed;
  });
};

/** The tick after the last section. */
export const lengthOf = (placed: readonly PlacedSection[]): number => {
  const last = placed.at(-1);
  return last === undefined ? 0 : last.at + last.section.score.length;
};

/** Quarter notes a minute of a beat tempo: the beat of a compound meter is a dotted quarter. */
export const quarterTempo = (bpm: number, beatTicks: number): number => (bpm * beatTicks) / 480;

/** Milliseconds as ticks at the tempo that holds `at` ticks into a section. */
const pushTicks = ({ tempo, chart }: Section, at: number, milliseconds: number): number => {
  const bpm = (tempo.findLast((step) => step.at <= at) ?? tempo[0])?.bpm ?? 0;
  return (milliseconds / 60000) * bpm * chart.meter.beatTicks;
};

/** A note of the file: `from` and `to` are ticks from its start. */
export interface PlacedNote {
  readonly from: number;
  readonly to: number;
  readonly event: NoteEvent;
}

/** Ends a note where its key is struck again; of two strokes at one tick the louder stays. */
const withoutOverlaps = (notes: readonly PlacedNote[]): readonly PlacedNote[] => {
  const sorted = notes.toSorted((a, b) => a.from - b.from || b.event.velocity - a.event.velocity);
  const latest = new Map<number, number>();
  const kept: PlacedNote[] = [];
  for (const note of sorted) {
    const key = Math.round(note.event.pitch);
    const index = latest.get(key) ?? -1;
    const before = kept[index];
    if (before?.from === note.from) continue;
    if (before !== undefined && before.to > note.from) kept[index] = { ...before, to: note.from };
    latest.set(key, kept.push(note) - 1);
  }
  return kept;
};

/**
 * The notes of one part, in order, never two of one key at once. `push` is how many milliseconds the part plays
 * behind (+) or ahead of (−) its own place against the beat; nothing moves before the start of the file.
 */
export const notesOfPart = (
  placed: readonly PlacedSection[],
  part: PartId,
  push: number,
): readonly PlacedNote[] =>
  withoutOverlaps(
    placed.flatMap(({ section, at }) =>
      section.score.events
        .filter((event) => event.part === part)
        .map((event) => {
          const late = push + lateOf(section.placing, event);
          const from = Math.max(0, Math.round(at + event.at + pushTicks(section, event.at, late)));
          const to = Math.min(lengthOf(placed), from + Math.round(event.length));
          return { from, to: Math.max(from + 1, to), event };
        }),
    ),
  );
