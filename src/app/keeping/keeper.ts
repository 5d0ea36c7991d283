import type { Writing } from '../../storage/kept-values';
import type { NoticeBoard } from './notice-board';
import { createShelfList, type ShelfList } from './shelf-list';
import { STORAGE_NOTICE, writingNotice } from './writing-notice';

/** Sees to it that what could not be written is written later. */
export interface Keeper {
  /** What the player's things lie on, for a file with all of them. */
  readonly shelves: ShelfList;
  /**
   * Carries a writing out. One that fails is tried again whenever another succeeds, and from time to time.
   * @param name of what is written; a later writing of the same name takes the place of one that waits.
   * @returns whether it is written.
   */
  write(name: string, carryOut: () => Writing): boolean;
  /** Tries everything that waits. */
  retry(): void;
  dispose(): void;
}

interface Options {
  readonly board: NoticeBoard;
  /** Runs something after so many seconds; returns what takes it back. */
  readonly later: (seconds: number, run: () => void) => () => void;
}

/** Room may come free in another tab or in the browser's own settings, of which a page is not told. */
const RETRY_SECONDS = 10;

/** Carries out all writing of a session. The player is told while something waits, and only then. */
export const createKeeper = ({ board, later }: Options): Keeper => {
  const waiting = new Map<string, () => Writing>();
  let cancel: (() => void) | null = null;

  const attempt = (name: string, carryOut: () => Writing): Writing => {
    const writing = carryOut();
    if (writing.kind === 'written') waiting.delete(name);
    else waiting.set(name, carryOut);
    return writing;
  };

  const retryOthers = (): void => {
    for (const [name, carryOut] of [...waiting]) {
      // What was carried out may have written this one too.
      if (waiting.get(name) === carryOut) attempt(name, carryOut);
    }
  };

  const settle = (): void => {
    cancel?.();
    cancel = null;
    if (waiting.size === 0) board.dismiss(STORAGE_NOTICE);
    else cancel = later(RETRY_SECONDS, retry);
  };

  const retry = (): void => {
    retryOthers();
    settle();
  };

  return {
    shelves: createShelfList(),
    write: (name, carryOut) => {
      const writing = attempt(name, carryOut);
      const notice = writingNotice(writing);
      if (notice) board.post(notice);
      else retryOthers();
      settle();
      return writing.kind === 'written';
    },
    retry,
    dispose: () => cancel?.(),
  };
};
