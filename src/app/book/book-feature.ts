import type { ChartCommands } from '../charts/charts';
import type { ChartsState } from '../charts/charts-state';
import type { Feature } from '../song/feature';
import type { SongState } from '../song/song-state';
import { type BookCommands, openBook } from './book';
import { type BookState, EMPTY_BOOK } from './book-state';
import { createSetRun, type SetRunCommands } from './set-run';

/** The player's book: songs and sets that are kept, and playing through a set. */
export const bookFeature: Feature<
  BookState,
  BookCommands & SetRunCommands,
  undefined,
  ChartsState & SongState,
  Pick<ChartCommands, 'keepChart'>
> = {
  initial: () => ({ book: EMPTY_BOOK }),
  join: (stand) => {
    const book = openBook(stand);
    const run = createSetRun(stand);
    return { ...run, commands: { ...book.commands, ...run.commands }, dispose: book.dispose };
  },
};
