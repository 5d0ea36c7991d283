import type { Writing } from '../../storage/kept-values';

/** What kept a take from being made, in words for the player. */
export class TakeTrouble extends Error {}

/** Throws in words where a file could not be written. */
export const mustBeWritten = (name: string, writing: Writing): void => {
  if (writing.kind === 'full')
    throw new TakeTrouble('There is no room left for the file. Free some space, then save again.');
  if (writing.kind === 'refused')
    throw new TakeTrouble(
      `The browser did not let ${name} be written (${writing.detail}). Allow downloads for this page, then save again.`,
    );
};
