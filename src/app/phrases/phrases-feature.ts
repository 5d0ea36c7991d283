import type { EarCommands } from '../ear/ear';
import type { EarState } from '../ear/ear-state';
import type { Join } from '../song/feature';
import type { Song } from '../song/song-state';
import type { PhrasesState, TradeCommands } from './phrases-state';
import { createTradeWatch } from './trade-watch';

/** Call and answer with what is heard. */
export const joinPhrases: Join<
  PhrasesState,
  TradeCommands,
  undefined,
  Song & EarState,
  Pick<EarCommands, 'hearing'>
> = (stand) => {
  const watch = createTradeWatch(stand);
  const { markAnswer, callAgain, hearTurn, onPlayhead, onStatus } = watch;
  return {
    commands: { markAnswer, callAgain, hearTurn },
    onPlayhead,
    onStatus,
    dispose: () => watch.dispose(),
  };
};
