import type { BookSong } from '../../core/book/book-song';
import type { GigSet } from '../../core/book/gig-set';
import type { StandChoices } from '../../core/book/song-link';

/** A set being played. */
export interface RunningSet {
  /** Id of the set. */
  readonly set: string;
  /** Which of its entries is on the stand, from 0. */
  readonly index: number;
  /** Seconds of talk that began when the last song ended, after which the next begins; `null` while none runs. */
  readonly talk: number | null;
}

/** What was taken out of the book last, so that it can be brought back. */
export type Dropped =
  | { readonly kind: 'song'; readonly song: BookSong }
  | { readonly kind: 'set'; readonly set: GigSet };

/** The player's book. */
export interface BookState {
  readonly book: {
    readonly songs: readonly BookSong[];
    readonly sets: readonly GigSet[];
    /** Id of the song that was put on the stand last, as long as it is in the book. */
    readonly onStand: string | null;
    readonly running: RunningSet | null;
    readonly dropped: Dropped | null;
    /** A song that came with the page's address and waits for an answer. */
    readonly linked: BookSong | null;
    /** What came with that song where the link holds a whole set-up. */
    readonly linkedStand: StandChoices | null;
    /** Id of the set that is to be printed in place of the song. */
    readonly paper: string | null;
  };
}

/** A book before it is read from the storage. */
export const EMPTY_BOOK: BookState['book'] = {
  songs: [],
  sets: [],
  onStand: null,
  running: null,
  dropped: null,
  linked: null,
  linkedStand: null,
  paper: null,
};
