import { messageOf } from '../../core/theory/thrown';
import type { Writing } from '../../storage/kept-values';

/** Something on the way to a file went wrong in a way the player can act on. */
export class SavingTrouble extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'SavingTrouble';
  }
}

/** What compresses cannot be had or broke down: one file fares as the next. */
export class EncoderTrouble extends SavingTrouble {
  constructor(name: string, reason: string) {
    super(
      `${name} cannot be made here now (${reason}). Choose WAV as the kind of file, which needs nothing else, and save again.`,
    );
    this.name = 'EncoderTrouble';
  }
}

/** Throws SavingTrouble unless it was written. */
export const mustBeWritten = (writing: Writing): void => {
  if (writing.kind === 'full') {
    throw new SavingTrouble(
      'There is no room left for the file. Free some space on this device, or choose fewer choruses, 16 bits or a compressed file, then save again.',
    );
  }
  if (writing.kind === 'refused') {
    throw new SavingTrouble(
      `The browser did not let the file be written (${writing.detail}). Allow downloads for this page, then save again.`,
    );
  }
};

/** What to tell the player about any failure of saving. */
export const troubleText = (error: unknown): string => {
  if (error instanceof SavingTrouble) return error.message;
  const reason = messageOf(error);
  return `The file could not be made (${reason}). Your song is as it was. Save again; if it fails again, open Combshed in another tab and save there.`;
};
