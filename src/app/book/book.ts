import { type BookSong, bookSong, parseBookSong, songChoices } from '../../core/book/book-song';
import { type GigSet, parseGigSet } from '../../core/book/gig-set';
import { freshName } from '../../core/song/chart-drafts';
import type { ChartsState } from '../charts/charts-state';
import { openShelf, type Shelf } from '../keeping/shelf';
import type { Stand } from '../song/feature';
import type { SongState } from '../song/song-state';
import type { BookState } from './book-state';

/** What the page can ask for about the songs and sets of the book. */
export interface BookCommands {
  /** Keeps what is on the stand as a new song; a name that is taken gets a number. */
  keepSong(name: string): void;
  /** Keeps what is on the stand as the song with this id, in place of what it was. */
  keepSongAgain(id: string): void;
  changeSong(id: string, change: Partial<Pick<BookSong, 'name' | 'words' | 'tags'>>): void;
  /** Takes a song from elsewhere into the book, under an id and a name of its own; returns that id. */
  takeSong(song: BookSong): string;
  duplicateSong(id: string): void;
  dropSong(id: string): void;
  newSet(name: string): void;
  keepSet(set: GigSet): void;
  duplicateSet(id: string): void;
  dropSet(id: string): void;
  /** Brings back what was taken out of the book last. */
  restoreDropped(): void;
  /** Chooses what is printed: a set, or with `null` the song on the stand. */
  choosePaper(set: string | null): void;
}

type Needs = Pick<Stand<State>, 'kept' | 'keeper' | 'store' | 'board' | 'newSeed'>;

/** The songs and sets a player keeps, open for changes. */
export interface Book {
  readonly commands: BookCommands;
  dispose(): void;
}

type State = BookState & ChartsState & SongState;

interface Shelves {
  readonly songs: Shelf<BookSong>;
  readonly sets: Shelf<GigSet>;
}

type Merge = (change: Partial<BookState['book']>) => void;

const openBookShelves = ({ kept, keeper, board }: Needs, merge: Merge): Shelves => ({
  songs: openShelf<BookSong>({
    kept,
    keeper,
    name: 'songs',
    noun: 'song',
    parse: parseBookSong,
    onChange: (songs) => merge({ songs }),
    onNotice: board.post,
  }),
  sets: openShelf<GigSet>({
    kept,
    keeper,
    name: 'sets',
    noun: 'set',
    parse: parseGigSet,
    onChange: (sets) => merge({ sets }),
    onNotice: board.post,
  }),
});

const namesOf = (items: readonly { readonly name: string }[]): readonly string[] =>
  items.map(({ name }) => name);

const createSongCommands = (
  { songs }: Shelves,
  newId: (kind: string) => string,
  state: () => State,
  merge: Merge,
): Pick<
  BookCommands,
  'keepSong' | 'keepSongAgain' | 'changeSong' | 'takeSong' | 'duplicateSong' | 'dropSong'
> => {
  const find = (id: string): BookSong | undefined => songs.items().find((song) => song.id === id);
  const add = (song: BookSong): string => {
    const id = newId('song');
    songs.put({ ...song, id, name: freshName(song.name, namesOf(songs.items())) });
    return id;
  };
  return {
    keepSong: (name) => {
      const { settings, ownCharts } = state();
      const id = newId('song');
      const song = bookSong({ id, name }, settings, ownCharts);
      songs.put({ ...song, name: freshName(song.name, namesOf(songs.items())) });
      merge({ onStand: id });
    },
    keepSongAgain: (id) => {
      const song = find(id);
      if (song === undefined) return;
      const { settings, ownCharts } = state();
      songs.put({
        ...song,
        choices: songChoices(settings),
        chart: bookSong(song, settings, ownCharts).chart,
      });
      merge({ onStand: id });
    },
    changeSong: (id, change) => {
      const song = find(id);
      const read = song && parseBookSong({ ...song, ...change }).item;
      if (read) songs.put(read);
    },
    takeSong: add,
    duplicateSong: (id) => {
      const song = find(id);
      if (song !== undefined) add(song);
    },
    dropSong: (id) => {
      const song = find(id);
      if (song === undefined) return;
      songs.remove(id);
      merge({
        dropped: { kind: 'song', song },
        onStand: state().book.onStand === id ? null : state().book.onStand,
      });
    },
  };
};

const createSetCommands = (
  { sets }: Shelves,
  newId: (kind: string) => string,
  merge: Merge,
): Pick<BookCommands, 'newSet' | 'keepSet' | 'duplicateSet' | 'dropSet'> => {
  const find = (id: string): GigSet | undefined => sets.items().find((set) => set.id === id);
  return {
    newSet: (name) => {
      const read = parseGigSet({ id: newId('set'), name, entries: [], goesOn: false }).item;
      if (read) sets.put({ ...read, name: freshName(read.name, namesOf(sets.items())) });
    },
    keepSet: sets.put,
    duplicateSet: (id) => {
      const set = find(id);
      if (set !== undefined)
        sets.put({ ...set, id: newId('set'), name: freshName(set.name, namesOf(sets.items())) });
    },
    dropSet: (id) => {
      const set = find(id);
      if (set === undefined) return;
      sets.remove(id);
      merge({ dropped: { kind: 'set', set } });
    },
  };
};

/** Opens the player's book: songs and sets as the storage has them, followed from tab to tab. */
export const openBook = (options: Needs): Book => {
  const { store, newSeed } = options;
  const merge: Merge = (change) => store.setState(({ book }) => ({ book: { ...book, ...change } }));
  const shelves = openBookShelves(options, merge);
  const { songs, sets } = shelves;
  merge({ songs: songs.items(), sets: sets.items() });
  const newId = (kind: string): string =>
    freshName(
      `${kind}-${newSeed()}`,
      [...songs.items(), ...sets.items()].map(({ id }) => id),
    );
  return {
    commands: {
      ...createSongCommands(shelves, newId, store.getState, merge),
      ...createSetCommands(shelves, newId, merge),
      restoreDropped: () => {
        const { dropped } = store.getState().book;
        if (dropped?.kind === 'song') songs.put(dropped.song);
        if (dropped?.kind === 'set') sets.put(dropped.set);
        merge({ dropped: null });
      },
      choosePaper: (paper) => merge({ paper }),
    },
    dispose: () => {
      songs.dispose();
      sets.dispose();
    },
  };
};
