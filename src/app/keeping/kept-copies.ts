import type { KeptCopy, KeptValues } from '../../storage/kept-values';
import type { FileSaver } from '../../storage/save-file';
import type { Keeper } from './keeper';

/** What the page can ask for about copies of what could not be read. */
export interface CopyCommands {
  /** What was set aside, as it lies there now. */
  keptCopies(): Promise<readonly KeptCopy[]>;
  /** Hands a copy over as a file. Returns what to tell the player. */
  saveCopy(copy: KeptCopy): Promise<string>;
  /** Deletes a copy; what waits for room is tried again. */
  deleteCopy(copy: KeptCopy): void;
}

interface Options {
  readonly kept: KeptValues;
  readonly keeper: Keeper;
  readonly saver: FileSaver;
}

/** Lists, hands over and deletes what was set aside because it could not be read. */
export const createCopyCommands = ({ kept, keeper, saver }: Options): CopyCommands => ({
  keptCopies: async () => kept.copies(),
  saveCopy: async ({ id, raw }) => {
    const name = `combshed-${id.replaceAll('.', '-')}.txt`;
    const writing = await saver.give(name, 'text/plain', new TextEncoder().encode(raw));
    return writing.kind === 'written'
      ? `Handed over as ${name}.`
      : 'The file could not be made. Copy the text instead.';
  },
  deleteCopy: ({ id }) => {
    kept.forgetCopy(id);
    keeper.retry();
  },
});
