import type { AskedNote, PlayedNote } from './asked-notes';

/** What a note more than was asked takes, of a note's worth of 1. */
const EXTRA = 0.1;

/** How notes are weighed. */
export interface Weighing {
  /** What a played note is worth as an answer to an asked one, from 0 to 1. */
  readonly worth: (asked: AskedNote, played: PlayedNote) => number;
  /** Whether a played note belongs to a shake, a slide or a curve. */
  readonly isPart: (played: PlayedNote) => boolean;
}

/**
 * The mark of an answer, 0–100: the most its notes come to when each answers one asked note at most, in order (a longest
 * common subsequence with weights; Wagner and Fischer, J. ACM 21, 1974; from memory), less what is played beyond the
 * number asked. So a fault more never raises it: a note left out takes its worth with it, one that is another note or
 * too much is worth nothing. Only where more was played than asked does a note less raise it.
 */
export const markOf = (
  asked: readonly AskedNote[],
  played: readonly PlayedNote[],
  { worth, isPart }: Weighing,
): number => {
  let row: readonly number[] = asked.map(() => 0);
  for (const note of played) {
    const next: number[] = [];
    asked.forEach((want, i) => {
      const paired = (i === 0 ? 0 : (row[i - 1] ?? 0)) + worth(want, note);
      next.push(Math.max(paired, row[i] ?? 0, next[i - 1] ?? 0));
    });
    row = next;
  }
  const beyond = Math.max(0, played.filter((note) => !isPart(note)).length - asked.length);
  const kept = (row.at(-1) ?? 0) - EXTRA * beyond;
  return Math.round(100 * Math.max(0, kept / Math.max(1, asked.length)));
};
