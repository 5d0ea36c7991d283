import type { PageLink } from '../../link/page-link';
import type { ChartCommands } from '../charts/charts';
import type { ChartsState } from '../charts/charts-state';
import type { Join } from '../song/feature';
import type { SongState } from '../song/song-state';
import { type BookCommands, openBook } from './book';
import type { BookState } from './book-state';
import { createSetRun, type SetRunCommands } from './set-run';
import { createSongLinks, type SongLinkCommands } from './song-links';

/** The player's book: songs and sets that are kept, and playing through a set. */
export const joinBook: Join<
  BookState,
  BookCommands & SetRunCommands & SongLinkCommands,
  PageLink | undefined,
  ChartsState & SongState,
  Pick<ChartCommands, 'keepChart'>
> = (stand, link) => {
  const book = openBook(stand);
  const run = createSetRun(stand);
  const links = createSongLinks({
    ...stand,
    link,
    take: (song) => run.commands.openSong(book.commands.takeSong(song)),
  });
  return { ...run, commands: { ...book.commands, ...run.commands, ...links }, dispose: book.dispose };
};
