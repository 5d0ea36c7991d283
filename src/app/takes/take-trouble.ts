import { messageOf } from '../../core/theory/thrown';
import type { Writing } from '../../storage/kept-values';

/** What kept a take from being made, in words for the player. */
export class TakeTrouble extends Error {}

/** What went wrong with a take, in words for the player. */
export const troubleText = (error: unknown): string =>
  error instanceof TakeTrouble ? error.message : `That did not work (${messageOf(error)}). Try again.`;

/** Throws in words where a file could not be written. */
export const mustBeWritten = (name: string, writing: Writing): void => {
  if (writing.kind === 'full')
    throw new TakeTrouble('There is no room left for the file. Free some space, then save again.');
  if (writing.kind === 'refused')
    throw new TakeTrouble(
      `The browser did not let ${name} be written (${writing.detail}). Allow downloads for this page, then save again.`,
    );
};
