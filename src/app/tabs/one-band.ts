import type { Tabs } from '../../tabs/create-tabs';
import type { Join } from '../song/feature';
import type { PlayCommands } from '../song/play-commands';

const NOTICE = 'other-tab';

/** One band at a time: where it begins in another tab, it stops in this one, and says so. */
export const joinTabs: Join<object, object, Tabs | undefined, unknown, Pick<PlayCommands, 'stop'>> = (
  { band, board, ask },
  tabs,
) => {
  let plays = false;
  const end = tabs?.onOther(() => {
    if (band.status().kind !== 'playing') return;
    ask().stop();
    board.post({
      id: NOTICE,
      tone: 'note',
      text: 'The band began to play in another window or tab of this page, so it stopped here.',
    });
  });
  return {
    commands: {},
    onStatus: ({ kind }) => {
      if (kind === 'playing' && !plays) {
        tabs?.begin();
        board.dismiss(NOTICE);
      }
      plays = kind === 'playing';
    },
    dispose: () => {
      end?.();
      tabs?.dispose();
    },
  };
};
