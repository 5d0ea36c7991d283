import type { Program } from '../../core/arranger/program';
import type { PartId } from '../../core/score/score';
import { asMidi, asTicks } from '../../core/theory/units';
import type { SectionSource } from '../transport/form-position';
import { type HeldPlace, heldUpcoming } from '../transport/held-place';
import { allNotes, notesBetween, type ScheduledNote } from '../transport/scheduled-note';
import { placeSection } from '../transport/timeline';
import type { Transport } from '../transport/transport';
import type { AuditionNote } from './engine';
import { MOST_AHEAD } from './engine-times';

/** Slow enough to follow by ear, in seconds. */
const AUDITION_GLIDE = 0.45;
const AUDITION_VELOCITY = 90;

/** A single note to listen to, `at` seconds of the audio clock. */
export const auditionNote = (
  part: PartId,
  { midi, seconds, glideFrom }: AuditionNote,
  at: number,
): ScheduledNote => ({
  event: {
    part,
    at: asTicks(0),
    length: asTicks(1),
    pitch: asMidi(midi),
    velocity: AUDITION_VELOCITY,
    glideFrom,
  },
  at,
  until: at + seconds,
  offset: 0,
  glideSeconds: glideFrom === 0 ? 0 : AUDITION_GLIDE,
  stroke: 0,
});

/** The notes of the first two sections of a program, timed from the first beat. */
export const openingNotes = (
  source: SectionSource,
  program: Program,
  fromBar: number,
): readonly ScheduledNote[] => {
  const first = source(program, 0, fromBar);
  if (first === null) return [];
  const placed = placeSection(first, 0);
  const second = first.last ? null : source(program, 1, fromBar);
  return [...allNotes(placed), ...(second ? allNotes(placeSection(second, placed.until)) : [])];
};

/** How much before the first beat its notes begin, where a part is pushed ahead; seconds. */
export const aheadOf = (first: readonly ScheduledNote[]): number =>
  Math.min(MOST_AHEAD, Math.max(0, -Math.min(0, ...first.map(({ at }) => at))));

/** The notes from a held bar to the end of the section after it, timed from that bar. */
export const notesFromHeld = (source: SectionSource, held: HeldPlace): readonly ScheduledNote[] => {
  const { section, ticks } = held.playhead;
  const placed = placeSection(section, 0, ticks);
  const next = heldUpcoming(source, held);
  return [
    ...allNotes(placed).filter(({ until }) => until > 0),
    ...(next ? allNotes(placeSection(next, placed.until)) : []),
  ];
};

/** The notes a transport holds for the next so many seconds. */
export const notesSoon = (transport: Transport, now: number, seconds: number): readonly ScheduledNote[] =>
  transport
    .timeline()
    .filter(({ open }) => open)
    .flatMap((placement) => notesBetween(placement, now, now + seconds, {}));
