import type { Section } from '../arranger/program';
import { secondsPerTickAt } from '../arranger/section-time';
import { sectionSeconds } from '../song/song-sections';
import { playheadIn } from './place-in-song';
import type { EndedNote, TakeNote } from './take-note';
import type { TakeEvent } from './take-passes';

/** Seconds of a section that have gone by at a tick of it, by its tempo steps. */
const secondsAt = (section: Section, ticks: number): number => {
  let seconds = 0;
  for (const [i, { at }] of section.tempo.entries()) {
    if (at >= ticks) break;
    const until = Math.min(ticks, section.tempo[i + 1]?.at ?? ticks);
    seconds += (until - at) * secondsPerTickAt(section, at);
  }
  return seconds;
};

const nearest = (heard: readonly TakeNote[], time: number): TakeNote | undefined => {
  let best = heard[0];
  for (const each of heard)
    if (best && Math.abs(each.note.from - time) < Math.abs(best.note.from - time)) best = each;
  return best;
};

/** Where in the music a note began, by one whose place is known; no place where that leads out of the section. */
const placedBy = ({ note: before, playhead }: TakeNote, note: EndedNote): TakeNote => {
  if (playhead === null) return { note, playhead };
  const { section } = playhead;
  const seconds = secondsAt(section, playhead.ticks) + note.from - before.from;
  const within = seconds >= 0 && seconds < sectionSeconds(section);
  return { note, playhead: within ? playheadIn(section, seconds) : null };
};

/**
 * What happened in a take, with the notes that were heard in its whole sound in place of those heard while it was
 * played: each takes its place in the music from the nearest of those, or from the next on its other side where the
 * nearest lies in another section.
 */
export const heardAgain = (
  events: readonly TakeEvent[],
  notes: readonly EndedNote[],
): readonly TakeEvent[] => {
  const live = events.flatMap((event) => (event.kind === 'note' ? [event.heard] : []));
  const groups = new Map<TakeNote | undefined, TakeNote[]>();
  for (const note of notes) {
    const near = nearest(live, note.from);
    const other =
      near &&
      nearest(
        live.filter((each) => each.note.from < note.from !== near.note.from < note.from),
        note.from,
      );
    const first = near && placedBy(near, note);
    const second = other && placedBy(other, note);
    const lost = first?.playhead === null && near?.playhead !== null && second?.playhead;
    const anchor = lost ? other : near;
    const placed = (lost ? second : first) ?? { note, playhead: null };
    groups.set(anchor, [...(groups.get(anchor) ?? []), placed]);
  }
  const told = (heard: TakeNote | undefined): readonly TakeEvent[] =>
    (groups.get(heard) ?? []).map((each) => ({ kind: 'note', heard: each }));
  return [
    ...events.flatMap((event) => (event.kind === 'note' ? told(event.heard) : [event])),
    ...(live.length === 0 ? told(undefined) : []),
  ];
};
