import type { Playhead } from '../arranger/playhead';
import type { Section } from '../arranger/program';
import type { TakeNote } from './take-note';

/** One way through a section, or a stretch without the band (`section` null), and the notes heard in it. */
export interface TakePass {
  readonly section: Section | null;
  readonly notes: readonly TakeNote[];
}

/** What happened in a take, in the order in which it was told: a bar began, or a note. */
export type TakeEvent =
  | { readonly kind: 'bar'; readonly playhead: Playhead }
  | { readonly kind: 'note'; readonly heard: TakeNote };

interface Growing {
  section: Section | null;
  /** Ticks that were reached. */
  ticks: number;
  readonly notes: TakeNote[];
}

/** Of the beginning of a chorus changed while it plays, the section made anew is the same way through it. */
const isSameWay = (one: Section, other: Section): boolean =>
  one.kind === other.kind && one.chorus === other.chorus && one.barNumbers[0] === other.barNumbers[0];

const barTicks = ({ chart }: Section): number => chart.meter.beats * chart.meter.beatTicks;

/**
 * The pass an event belongs to: one of the last two, since a note is told a moment after it began. Going back by more
 * than a bar is another pass.
 */
const passOf = (passes: readonly Growing[], playhead: Playhead | null): Growing | undefined => {
  const last = passes.at(-1);
  if (playhead === null) return last?.section === null ? last : undefined;
  const { section, ticks } = playhead;
  return passes
    .slice(-2)
    .findLast(
      (pass) =>
        pass.section !== null &&
        isSameWay(pass.section, section) &&
        ticks > pass.ticks - Math.min(barTicks(section), section.score.length / 2),
    );
};

/** Tells the ways through the song apart. Choruses in which nothing was played are among them; empty ends are not. */
export const takePasses = (events: readonly TakeEvent[]): readonly TakePass[] => {
  const passes: Growing[] = [];
  for (const event of events) {
    const playhead = event.kind === 'bar' ? event.playhead : event.heard.playhead;
    let pass = passOf(passes, playhead);
    if (pass === undefined) {
      pass = { section: playhead?.section ?? null, ticks: 0, notes: [] };
      passes.push(pass);
    }
    if (playhead !== null) {
      pass.section = playhead.section;
      pass.ticks = Math.max(pass.ticks, playhead.ticks);
    }
    if (event.kind === 'note') pass.notes.push(event.heard);
  }
  const played = passes.map(({ notes }) => notes.length > 0);
  return passes
    .slice(played.indexOf(true) < 0 ? passes.length : played.indexOf(true), played.lastIndexOf(true) + 1)
    .map(({ section, notes }) => ({
      section,
      notes: notes.toSorted((a, b) => a.note.from - b.note.from),
    }));
};
