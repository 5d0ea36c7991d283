import type { ChartCommands } from '../charts/charts';
import type { ChartsState } from '../charts/charts-state';
import type { EarCommands } from '../ear/ear';
import type { EarState } from '../ear/ear-state';
import type { Join } from '../song/feature';
import type { Song, SongState } from '../song/song-state';
import { openExercises } from './exercises';
import { openLibrary } from './library';
import type { PhraseFiles } from './phrase-files';
import type {
  ExerciseCommands,
  LibraryCommands,
  PhrasesState,
  PlayInCommands,
  TradeCommands,
} from './phrases-state';
import { createPlayIn } from './play-in';
import { createTradeWatch } from './trade-watch';

/** Call and answer with what is heard, and the phrases that are kept. */
export const joinPhrases: Join<
  PhrasesState,
  TradeCommands & LibraryCommands & ExerciseCommands & PlayInCommands,
  PhraseFiles | undefined,
  ChartsState & Song & SongState & EarState,
  Pick<EarCommands, 'hearing'> & Pick<ChartCommands, 'keepChart'>
> = (stand, files) => {
  const watch = createTradeWatch(stand);
  const library = openLibrary(stand, files);
  const exercises = openExercises(stand, files?.saver);
  const playIn = createPlayIn(stand);
  const { markAnswer, tapAnswer, callAgain, hearTurn } = watch;
  return {
    commands: {
      ...{ markAnswer, tapAnswer, callAgain, hearTurn },
      ...library.commands,
      ...exercises.commands,
      ...playIn.commands,
    },
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
      exercises.dispose();
      playIn.dispose();
    },
  };
};
