import type { GigSet } from '../../core/book/gig-set';
import type { ChartCommands } from '../charts/charts';
import type { ChartsState } from '../charts/charts-state';
import { putSongOnStand } from '../charts/song-on-stand';
import type { Notice } from '../keeping/notice';
import type { Joined, Stand } from '../song/feature';
import type { SongState } from '../song/song-state';
import type { BookState, RunningSet } from './book-state';

/** What the page can ask for about putting songs of the book on the stand. */
export interface SetRunCommands {
  /** Puts a song on the stand; a band that plays is stopped. */
  openSong(id: string): void;
  /** Puts the set's first song, or another, on the stand and goes on from there. */
  startSet(id: string, index?: number): void;
  /** The next song of the set that runs; where none runs, nothing. */
  nextSong(): void;
  previousSong(): void;
  /** The next song waits until it is played by hand. */
  holdSet(): void;
  leaveSet(): void;
}

/** Playing through a set. */
export type SetRun = Required<Pick<Joined<SetRunCommands>, 'commands' | 'onPlayhead' | 'onStatus'>>;

type Needs = Stand<BookState & ChartsState & SongState, Pick<ChartCommands, 'keepChart'>>;

const GONE: Notice = {
  id: 'song-gone',
  tone: 'note',
  text: 'That song is no longer in your book. Take it out of the set, or bring the song back under Book.',
};

/** Makes what puts a song of the book on the stand. */
const createOpening =
  (needs: Needs): ((id: string) => void) =>
  (id) => {
    const { store, board } = needs;
    const song = store.getState().book.songs.find((each) => each.id === id);
    if (song === undefined) return board.post(GONE);
    putSongOnStand(needs, song);
    store.setState(({ book }) => ({ book: { ...book, onStand: song.id } }));
  };

/** Tells a song that has ended from one that was stopped. */
const createEndWatch = (onBegin: () => void, onEnd: () => void): Omit<SetRun, 'commands'> => {
  let inLastSection = false;
  let wasPlaying = false;
  return {
    onPlayhead: (position) => {
      if (position !== null) inLastSection = position.section.last;
    },
    onStatus: ({ kind }) => {
      const ended = wasPlaying && kind === 'ready' && inLastSection;
      wasPlaying = kind === 'playing';
      if (wasPlaying) {
        inLastSection = false;
        onBegin();
      }
      if (ended) onEnd();
    },
  };
};

/** Puts songs of the book on the stand, one after another where a set runs. */
export const createSetRun = (needs: Needs): SetRun => {
  const { store, orders, later } = needs;
  const open = createOpening(needs);
  let stopWaiting = (): void => {};
  const running = (): RunningSet | null => store.getState().book.running;
  const setOf = (id: string): GigSet | undefined => store.getState().book.sets.find((set) => set.id === id);
  const run = (next: RunningSet | null): void => {
    stopWaiting();
    stopWaiting = () => {};
    store.setState(({ book }) => ({ book: { ...book, running: next } }));
  };
  const goTo = (id: string, index: number): void => {
    const entry = setOf(id)?.entries[index];
    if (entry === undefined) return;
    run({ set: id, index, talk: null });
    open(entry.song);
  };
  const moveBy = (step: number): void => {
    const now = running();
    if (now !== null) goTo(now.set, now.index + step);
  };
  const hold = (): void => {
    const now = running();
    if (now !== null) run({ ...now, talk: null });
  };
  const talk = (): void => {
    const now = running();
    const set = now === null ? undefined : setOf(now.set);
    const entry = set?.entries[now?.index ?? 0];
    if (now === null || !set?.goesOn || entry === undefined || now.index + 1 >= set.entries.length) return;
    run({ ...now, talk: entry.talk });
    stopWaiting = later(entry.talk, () => {
      goTo(now.set, now.index + 1);
      void orders.play(0);
    });
  };
  const commands: SetRunCommands = {
    openSong: (id) => {
      run(null);
      open(id);
    },
    startSet: (id, index = 0) => goTo(id, index),
    nextSong: () => moveBy(1),
    previousSong: () => moveBy(-1),
    holdSet: hold,
    leaveSet: () => run(null),
  };
  return { commands, ...createEndWatch(hold, talk) };
};
