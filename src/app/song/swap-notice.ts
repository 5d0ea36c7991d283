import type { Settings } from '../../core/settings/settings';
import { swapSentence } from '../../core/song/harp-in-case';
import { noteNames } from '../../core/theory/other-names';
import type { KeepingState } from '../keeping/keeping-state';
import type { NoticeBoard } from '../keeping/notice-board';
import type { Slice } from '../slice';
import type { SongState } from './song-state';

/** Seconds the sentence stays: the head of the page goes on saying which harp the song wants. */
const STAYS = 12;

const ID = 'harp-swap';

type Seen = Pick<KeepingState, 'harpCase'> & Pick<SongState, 'settings' | 'waiting'>;

interface Parts {
  readonly store: Pick<Slice<Seen>, 'getState' | 'subscribe'>;
  readonly board: NoticeBoard;
  readonly later: (seconds: number, run: () => void) => () => void;
}

/** Says that a choice asks for another harp, until the player has taken one, the choice is taken back, or some seconds have gone by. */
export const createSwapNotice = ({ store, board, later }: Parts) => {
  let forget = (): void => {};
  const onHarp = (): void => {
    forget();
    board.dismiss(ID);
  };
  const show = (text: string, { harpKey }: Settings): void => {
    board.post({ id: ID, tone: 'note', text });
    const stop = later(STAYS, onHarp);
    const leave = store.subscribe(({ waiting, settings }) => {
      if ((waiting?.settings ?? settings).harpKey !== harpKey) onHarp();
    });
    forget = () => {
      stop();
      leave();
    };
  };
  return {
    onHarp,
    onSwap: (before: Settings, after: Settings): void => {
      const text = swapSentence(before, after, store.getState().harpCase);
      if (text === null) return;
      forget();
      // In a task of its own: the page gives way for it, which beside another key is too much for one.
      forget = later(0, () => show(noteNames(after.noteNames).key(text), after));
    },
  };
};
