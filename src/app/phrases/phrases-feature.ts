import type { EarCommands } from '../ear/ear';
import type { EarState } from '../ear/ear-state';
import type { Join } from '../song/feature';
import type { Song } from '../song/song-state';
import { openLibrary } from './library';
import type { PhraseFiles } from './phrase-files';
import type { LibraryCommands, PhrasesState, TradeCommands } from './phrases-state';
import { createTradeWatch } from './trade-watch';

/** Call and answer with what is heard, and the phrases that are kept. */
export const joinPhrases: Join<
  PhrasesState,
  TradeCommands & LibraryCommands,
  PhraseFiles | undefined,
  Song & EarState,
  Pick<EarCommands, 'hearing'>
> = (stand, files) => {
  const watch = createTradeWatch(stand);
  const library = openLibrary(stand, files);
  const { markAnswer, callAgain, hearTurn, onPlayhead, onStatus } = watch;
  return {
    commands: { markAnswer, callAgain, hearTurn, ...library.commands },
    onPlayhead,
    onStatus,
    dispose: () => {
      watch.dispose();
      library.dispose();
    },
  };
};
