import { type JoinItems, mergeItems, withOwnIds } from '../../core/book/merge-items';
import type { KeptValues } from '../../storage/kept-values';
import type { Keeper } from './keeper';
import { openRecord, type ReadValue } from './kept-record';
import type { Notice } from './notice';
import type { TakenIn } from './shelf-list';

/** Something the player made and named. */
export interface ShelfItem {
  readonly id: string;
  readonly name: string;
}

/** A kept item as it could be read; `null` when nothing of it could. */
export interface ReadItem<Item> {
  readonly item: Item | null;
  readonly problems: readonly string[];
}

export interface ShelfOptions<Item extends ShelfItem> {
  readonly kept: KeptValues;
  readonly keeper: Keeper;
  /** Name in the storage. */
  readonly name: string;
  /** What one item is called in a message: `chart`, `tuning`. */
  readonly noun: string;
  /** Reads one kept item, repairing what it can and saying so in sentences. Never throws. */
  readonly parse: (value: unknown) => ReadItem<Item>;
  /** Makes one of two with the same id where a file brings things in; without it both are kept. */
  readonly join?: JoinItems<Item>;
  /** Called with all items whenever they change, here or elsewhere: in another tab, or from a file. */
  readonly onChange: (items: readonly Item[], elsewhere: boolean) => void;
  readonly onNotice: (notice: Notice) => void;
  /** Called when everything that waited is written. */
  readonly onWritten?: () => void;
}

/** A named collection of things the player made, kept in the browser. */
export interface Shelf<Item extends ShelfItem> {
  items(): readonly Item[];
  /** An item as the storage holds it at this moment, another tab's included; `null` where it is not there. */
  stored(id: string): Item | null;
  /** False while a change of this item waits to be written. */
  isWritten(id: string): boolean;
  /** Adds an item, or replaces the one with its id. Returns whether that is written. */
  put(item: Item): boolean;
  /** Takes an item away. Returns whether that is written. */
  remove(id: string): boolean;
  dispose(): void;
}

const readItems = <Item extends ShelfItem>(
  value: unknown,
  parse: (value: unknown) => ReadItem<Item>,
  noun: string,
): ReadValue<readonly Item[]> => {
  if (!Array.isArray(value)) return { value: [], problems: [`The kept ${noun}s are not a list.`] };
  const results = value.map(parse);
  return {
    value: results.flatMap(({ item }) => item ?? []),
    problems: results.flatMap(({ problems }) => problems),
  };
};

const withItem = <Item extends ShelfItem>(items: readonly Item[], item: Item): readonly Item[] =>
  items.some(({ id }) => id === item.id)
    ? items.map((each) => (each.id === item.id ? item : each))
    : [...items, item];

/**
 * Opens a shelf. Every change is made on what the storage holds at that moment, so that two tabs add to one list
 * instead of overwriting each other's; what cannot be read is set aside and said.
 */
export const openShelf = <Item extends ShelfItem>(options: ShelfOptions<Item>): Shelf<Item> => {
  const { kept, keeper, name, noun, parse, onChange, onNotice, onWritten } = options;
  const record = openRecord<readonly Item[]>({
    kept,
    keeper,
    name,
    empty: [],
    parse: (value) => {
      const read = readItems(value, parse, noun);
      return { ...read, value: withOwnIds(read.value, options.join) };
    },
    damaged: `The kept ${noun}s are not a list.`,
    storable: (items) => items,
    onNotice,
    onElsewhere: (items) => onChange(items, true),
    ...(onWritten ? { onWritten } : {}),
  });
  const change = (id: string, step: (items: readonly Item[]) => readonly Item[]): boolean => {
    const written = record.change(id, step);
    onChange(record.value(), false);
    return written;
  };
  const takeIn = (things: readonly unknown[]): TakenIn => {
    const { value: incoming, problems } = readItems(things, parse, noun);
    const { added, ...others } = mergeItems(record.value(), incoming, options.join);
    for (const item of added) record.change(item.id, (items) => withItem(items, item));
    if (added.length > 0) onChange(record.value(), true);
    return { added: added.length, ...others, problems };
  };
  const leaveList = keeper.shelves.add(name, { noun, items: record.value, takeIn });
  return {
    items: record.value,
    stored: (id) => record.stored().find((item) => item.id === id) ?? null,
    isWritten: (id) => !record.isWaiting(id),
    put: (item) => change(item.id, (items) => withItem(items, item)),
    remove: (id) => change(id, (items) => items.filter((item) => item.id !== id)),
    dispose: () => {
      leaveList();
      record.dispose();
    },
  };
};
