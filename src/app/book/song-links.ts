import { type BookSong, bookSong } from '../../core/book/book-song';
import { readSongText, type StandChoices, songText, withOwnChart } from '../../core/book/song-link';
import type { LinkedText, PageLink } from '../../link/page-link';
import type { ChartsState } from '../charts/charts-state';
import { problemText } from '../keeping/problem-text';
import type { Stand } from '../song/feature';
import type { SongState } from '../song/song-state';
import type { BookState } from './book-state';

export type { LinkedText };

/** What the page can ask for about songs in links. */
export interface SongLinkCommands {
  /** An address that opens a song of the book elsewhere, or with `null` what is on the stand. */
  linkTo(song: string | null): Promise<LinkedText>;
  /**
   * Takes the song that came with the address into the book and puts it on the stand.
   * @param whole with the reach, the mix and the views that came with a set-up.
   */
  takeLinkedSong(whole: boolean): void;
  /** Offers the song or set-up of a file as one that came with the address; sentences on what of it could not be read. */
  openSongText(text: string): Promise<readonly string[]>;
  /** Lets the song that came with the address go. */
  leaveLinkedSong(): void;
}

type Needs = Pick<Stand<BookState & ChartsState & SongState>, 'store' | 'board' | 'apply'> & {
  readonly link: PageLink | undefined;
  /** Puts a song into the book and on the stand. */
  readonly take: (song: BookSong) => void;
};

const NO_LINKS: LinkedText = { trouble: 'This page has no address of its own to make a link from.' };

/** Reads the song that came with the address, and makes addresses for songs. */
export const createSongLinks = ({ store, board, apply, link, take }: Needs): SongLinkCommands => {
  const offer = (linked: BookSong | null, linkedStand: StandChoices | null): void =>
    store.setState(({ book }) => ({ book: { ...book, linked, linkedStand } }));
  const receive = async (): Promise<void> => {
    const linked = await link?.take();
    if (linked === null || linked === undefined) return;
    const { item, stand, problems } =
      'text' in linked ? readSongText(linked.text) : { item: null, stand: null, problems: [linked.trouble] };
    offer(item, stand);
    if (problems.length > 0) board.post({ id: 'link', tone: 'trouble', text: problemText(problems) });
  };
  void receive();
  return {
    linkTo: async (id) => {
      const { settings, ownCharts, book, tune } = store.getState();
      const kept = book.songs.find((song) => song.id === id);
      const song = kept ?? bookSong({ id: '', name: tune.chart.title }, settings, ownCharts);
      return link === undefined ? NO_LINKS : link.write(songText(song, kept ? null : settings));
    },
    takeLinkedSong: (whole) => {
      const { linked, linkedStand } = store.getState().book;
      offer(null, null);
      if (linked === null) return;
      take(withOwnChart(linked, store.getState().ownCharts));
      if (whole && linkedStand !== null) apply({ ...store.getState().settings, ...linkedStand });
    },
    openSongText: async (text) => {
      const { item, stand, problems } = readSongText(text);
      offer(item, stand);
      return item === null ? ['This file holds no song and no exercise of this program.'] : problems;
    },
    leaveLinkedSong: () => offer(null, null),
  };
};
