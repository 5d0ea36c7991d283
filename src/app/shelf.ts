import type { KeptValues, Writing } from '../storage/kept-values';
import { writingNotice } from './kept-settings';
import type { Notice } from './session-state';

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
  /** Name in the storage. */
  readonly name: string;
  /** What one item is called in a message: `chart`, `tuning`. */
  readonly noun: string;
  /** Reads one kept item, repairing what it can and saying so in sentences. Never throws. */
  readonly parse: (value: unknown) => ReadItem<Item>;
  /** Called with all items whenever they change, here or in another tab. */
  readonly onChange: (items: readonly Item[]) => void;
  readonly onNotice: (notice: Notice) => void;
}

/** A named collection of things the player made, kept in the browser. */
export interface Shelf<Item extends ShelfItem> {
  items(): readonly Item[];
  /** Adds an item, or replaces the one with its id. */
  put(item: Item): void;
  remove(id: string): void;
  dispose(): void;
}

interface Read<Item> {
  readonly items: readonly Item[];
  readonly problems: readonly string[];
}

const readItems = <Item extends ShelfItem>(
  value: unknown,
  parse: (value: unknown) => ReadItem<Item>,
  noun: string,
): Read<Item> => {
  if (!Array.isArray(value)) return { items: [], problems: [`The kept ${noun}s are not a list.`] };
  const results = value.map(parse);
  return {
    items: results.flatMap(({ item }) => item ?? []),
    problems: results.flatMap(({ problems }) => problems),
  };
};

/**
 * Opens a shelf. Every change is made on what the storage holds at that moment, so that two tabs add to one list
 * instead of overwriting each other's; what cannot be read is set aside and said.
 */
export const openShelf = <Item extends ShelfItem>(options: ShelfOptions<Item>): Shelf<Item> => {
  const { kept, name, noun, parse, onChange, onNotice } = options;
  let items: readonly Item[] = [];
  /** True while the storage holds less than the memory: then reading it again would lose what the player made. */
  let behind = false;

  const say = (writing: Writing): void => {
    const notice = writingNotice(writing);
    if (notice) onNotice(notice);
  };

  const takeOver = (value: unknown, raw: string): void => {
    const read = readItems(value, parse, noun);
    items = read.items;
    if (read.problems.length === 0) return;
    say(kept.setAside(name, raw));
    onNotice({
      id: `unread-${name}`,
      tone: 'trouble',
      text: `${read.problems.join(' ')} A copy of what was there is kept in this browser.`,
    });
  };

  const refresh = (): void => {
    if (behind) return;
    const reading = kept.read(name);
    if (reading.kind === 'value') takeOver(reading.value, reading.raw);
    else if (reading.kind === 'unreadable') takeOver(null, reading.raw);
  };

  const write = (next: readonly Item[]): void => {
    items = next;
    const writing = kept.write(name, next);
    behind = writing.kind !== 'written';
    say(writing);
    onChange(items);
  };

  refresh();
  const unsubscribe = kept.onWrittenElsewhere(name, (value) => {
    takeOver(value, JSON.stringify(value));
    onChange(items);
  });

  return {
    items: () => items,
    put: (item) => {
      refresh();
      const known = items.some(({ id }) => id === item.id);
      write(known ? items.map((each) => (each.id === item.id ? item : each)) : [...items, item]);
    },
    remove: (id) => {
      refresh();
      write(items.filter((item) => item.id !== id));
    },
    dispose: unsubscribe,
  };
};
