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

/** What a file with everything sees of a place where things are kept; one in a database answers later. */
export interface ListedShelf {
  /** What one thing is called: `chart`. */
  readonly noun: string;
  /** Whether its things are large, and go into a file only where they are wanted there. */
  readonly large?: boolean;
  items(): readonly unknown[] | Promise<readonly unknown[]>;
  /** Puts things beside those that are there; see `mergeItems`. What cannot be read is left out and said. */
  takeIn(things: readonly unknown[]): TakenIn | Promise<TakenIn>;
}

/** Every shelf that is open, by its name in the storage, in the order they were opened. */
export interface ShelfList {
  /** Returns what takes the shelf off the list. */
  add(name: string, shelf: ListedShelf): () => void;
  /** Names what opens a shelf that is not open from the start. */
  expect(open: () => Promise<unknown>): void;
  /** Opens what is still expected. A shelf that cannot be opened is not among them. */
  all(): Promise<readonly (readonly [string, ListedShelf])[]>;
}

/** Creates an empty list: shelves enter it by themselves as they are opened. */
export const createShelfList = (): ShelfList => {
  const shelves = new Map<string, ListedShelf>();
  const expected: (() => Promise<unknown>)[] = [];
  return {
    add: (name, shelf) => {
      shelves.set(name, shelf);
      return () => shelves.delete(name);
    },
    expect: (open) => void expected.push(open),
    all: async () => {
      await Promise.allSettled(expected.map((open) => open()));
      return [...shelves];
    },
  };
};
