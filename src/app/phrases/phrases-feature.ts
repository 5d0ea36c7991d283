import type { EarCommands } from '../ear/ear';
import type { EarState } from '../ear/ear-state';
import type { Join } from '../song/feature';
import type { Song } from '../song/song-state';
import type { Mark, PhrasesState } from './phrases-state';
import { createTradeWatch } from './trade-watch';

/** What the page can ask for about trading. */
export interface TradeCommands {
  /** Marks the last answer by the player's own ear. */
  markAnswer(mark: Mark): void;
  /** The call of the turn that goes on comes once more after it. */
  callAgain(): void;
  /** Plays the last call, or what was heard of the answer, alone; asked again, it stops. */
  hearTurn(which: 'call' | 'answer'): void;
}

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
