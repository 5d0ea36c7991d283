import type { NewIds } from '../../core/book/merge-items';

/** What became of things taken in from a file. */
export interface TakenIn {
  readonly added: number;
  readonly known: number;
  readonly copied: number;
  readonly newIds: NewIds;
  /** What could not be read, in sentences. */
  readonly problems: readonly string[];
}

/** A shelf as a file with everything sees it. */
export interface ListedShelf {
  /** What one thing is called: `chart`. */
  readonly noun: string;
  items(): readonly unknown[];
  /** Puts things beside those that are there; see `mergeItems`. */
  takeIn(things: readonly unknown[]): TakenIn;
}

/** Every shelf that is open, by its name in the storage, in the order they were opened. */
export interface ShelfList {
  /** Returns what takes the shelf off the list. */
  add(name: string, shelf: ListedShelf): () => void;
  all(): readonly (readonly [string, ListedShelf])[];
}

/** Creates an empty list: shelves enter it by themselves as they are opened. */
export const createShelfList = (): ShelfList => {
  const shelves = new Map<string, ListedShelf>();
  return {
    add: (name, shelf) => {
      shelves.set(name, shelf);
      return () => shelves.delete(name);
    },
    all: () => [...shelves],
  };
};
