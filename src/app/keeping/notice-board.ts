import type { Slice } from '../slice';
import type { KeepingState } from './keeping-state';
import type { Notice } from './notice';

/** Where sentences for the player are put up and taken down. */
export interface NoticeBoard {
  /** Puts a notice up in place of the one with its id. */
  post(notice: Notice): void;
  dismiss(id: string): void;
}

/** The notices of the page. */
export const createNoticeBoard = (store: Slice<KeepingState>): NoticeBoard => {
  const without = (id: string): readonly Notice[] =>
    store.getState().notices.filter((notice) => notice.id !== id);
  return {
    post: (notice: Notice): void => store.setState({ notices: [...without(notice.id), notice] }),
    dismiss: (id: string): void => {
      if (store.getState().notices.some((notice) => notice.id === id))
        store.setState({ notices: without(id) });
    },
  };
};
