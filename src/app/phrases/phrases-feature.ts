import type { EarCommands } from '../ear/ear';
import type { EarState } from '../ear/ear-state';
import type { Join } from '../song/feature';
import type { Song } from '../song/song-state';
import { openLibrary } from './library';
import type { PhraseFiles } from './phrase-files';
import type { LibraryCommands, PhrasesState, PlayInCommands, TradeCommands } from './phrases-state';
import { createPlayIn } from './play-in';
import { createTradeWatch } from './trade-watch';

/** Call and answer with what is heard, and the phrases that are kept. */
export const joinPhrases: Join<
  PhrasesState,
  TradeCommands & LibraryCommands & PlayInCommands,
  PhraseFiles | undefined,
  Song & EarState,
  Pick<EarCommands, 'hearing'>
> = (stand, files) => {
  const watch = createTradeWatch(stand);
  const library = openLibrary(stand, files);
  const playIn = createPlayIn(stand);
  const { markAnswer, tapAnswer, callAgain, hearTurn } = watch;
  return {
    commands: { markAnswer, tapAnswer, callAgain, hearTurn, ...library.commands, ...playIn.commands },
    onPlayhead: (position) => {
      watch.onPlayhead(position);
      playIn.onPlayhead(position);
    },
    onStatus: (status) => {
      watch.onStatus(status);
      playIn.onStatus(status);
    },
    dispose: () => {
      watch.dispose();
      library.dispose();
      playIn.dispose();
    },
  };
};
