import type { LastingStorage } from '../../storage/lasting';
import type { BookState } from '../book/book-state';
import type { ChartsState } from '../charts/charts-state';
import type { KeepingState } from '../keeping/keeping-state';
import { STORAGE_NOTICE } from '../keeping/writing-notice';
import type { PhrasesState } from '../phrases/phrases-state';
import type { Join } from '../song/feature';
import type { SongState } from '../song/song-state';
import type { LastingState } from './lasting-state';

/** What the page can ask for about how long the browser keeps things. */
export interface LastingCommands {
  /** Asks the browser to keep what is stored for good. */
  askToKeep(): Promise<void>;
  /** Lets the offer rest for good. */
  leaveKeeping(): void;
}

type Reads = BookState & ChartsState & KeepingState & PhrasesState & Pick<SongState, 'settings'>;

/** What the player made, and could not get back. */
const hasSomethingToLose = ({ book, ownCharts, ownTunings, harpCase, phrasebook }: Reads): boolean =>
  [book.songs, book.sets, ownCharts, ownTunings, harpCase, phrasebook.phrases].some(
    (made) => made.length > 0,
  );

/**
 * Offers once, when there is something to lose, to have the browser keep it for good. Nothing is asked at the start: the
 * browser's own question would come out of nowhere. Where the browser keeps nothing at all, there is nothing to offer.
 */
export const joinLasting: Join<LastingState, LastingCommands, LastingStorage | undefined, Reads> = (
  { store, apply },
  device,
) => {
  const set = (change: Partial<LastingState['lasting']>): void =>
    store.setState(({ lasting }) => ({ lasting: { ...lasting, ...change } }));
  let looked = false;
  const isRefused = (): boolean => store.getState().notices.some(({ id }) => id === STORAGE_NOTICE);
  const offer = async (): Promise<void> => {
    const { settings } = store.getState();
    if (looked || device === undefined || !hasSomethingToLose(store.getState()) || isRefused()) return;
    looked = true;
    const is = await device.state();
    looked = !isRefused();
    if (!looked) return;
    set({ is, offered: is === 'may go' && !settings.keepingOffered });
  };
  const answered = (): void => {
    set({ offered: false });
    apply({ ...store.getState().settings, keepingOffered: true });
  };
  const leave = store.subscribe(() => void offer());
  void offer();
  return {
    commands: {
      askToKeep: async () => {
        answered();
        const is = (await device?.ask()) ?? 'unknown';
        set({ is, declined: is !== 'kept' });
      },
      leaveKeeping: answered,
    },
    dispose: leave,
  };
};
