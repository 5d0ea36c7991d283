import { mergeItems } from '../../core/book/merge-items';
import { type LibraryKind, libraryText, readLibraryText } from '../../core/phrasebook/library-file';
import { freshName } from '../../core/song/chart-drafts';
import { counted } from '../../core/theory/wording';
import type { FileSaver } from '../../storage/save-file';
import type { NoticeBoard } from '../keeping/notice-board';
import { openShelf, type Shelf, type ShelfItem } from '../keeping/shelf';
import type { Stand } from '../song/feature';

/** A list of things the player made, with what can be done with any kind of them. */
export interface KeptItems<Item extends ShelfItem> {
  readonly shelf: Shelf<Item>;
  find(id: string): Item | undefined;
  /** Keeps one under an id and a name of its own; returns the id. */
  add(item: Omit<Item, 'id'>): string;
  /** Takes one out and returns it, so that it can be brought back. */
  drop(id: string): Item | null;
  /** Saves all of them in one file. */
  save(): Promise<void>;
  /** Puts those of such a file beside those that are here; says what came of each piece. */
  open(text: string): readonly string[];
}

/** Hands a file over, and says where that did not go. */
export const giveFile =
  (board: NoticeBoard, saver: FileSaver | undefined) =>
  async (name: string, type: string, bytes: Uint8Array): Promise<void> => {
    const writing = await saver?.give(name, type, bytes);
    if (writing?.kind === 'written') return;
    const why = writing?.kind === 'full' ? 'there is no room for it' : 'the browser refused it';
    board.post({ id: 'phrase-file', tone: 'trouble', text: `${name} was not saved: ${why}.` });
  };

interface Needs<Item> {
  readonly stand: Pick<Stand<unknown>, 'kept' | 'keeper' | 'board' | 'newSeed'>;
  readonly kind: LibraryKind<Item>;
  readonly saver: FileSaver | undefined;
  readonly onChange: (items: readonly Item[]) => void;
}

/** Opens the player's things of one kind. */
export const openKeptItems = <Item extends ShelfItem>({
  stand,
  kind,
  saver,
  onChange,
}: Needs<Item>): KeptItems<Item> => {
  const { kept, keeper, board, newSeed } = stand;
  const { noun, plural, parse } = kind;
  const shelf = openShelf<Item>({
    ...{ kept, keeper, name: plural, noun, parse, onChange },
    onNotice: board.post,
  });
  onChange(shelf.items());
  const give = giveFile(board, saver);
  return {
    shelf,
    find: (id) => shelf.items().find((each) => each.id === id),
    add: (item) => {
      const id = `${noun}-${newSeed()}`;
      const names = shelf.items().map((each) => each.name);
      const { item: read } = parse({ ...item, id, name: freshName(item.name, names) });
      if (read !== null) shelf.put(read);
      return id;
    },
    drop: (id) => {
      const dropped = shelf.items().find((each) => each.id === id);
      shelf.remove(id);
      return dropped ?? null;
    },
    save: () =>
      give(`${plural}.json`, 'application/json', new TextEncoder().encode(libraryText(kind, shelf.items()))),
    open: (text) => {
      const { items, problems } = readLibraryText(kind, text);
      const { added, known } = mergeItems(shelf.items(), items);
      for (const item of added) shelf.put(item);
      return [
        ...(added.length > 0 ? [`${counted(added.length, noun, plural)} added.`] : []),
        ...(known > 0
          ? [`${counted(known, noun, plural)} ${known === 1 ? 'was' : 'were'} here already.`]
          : []),
        ...problems,
      ];
    },
  };
};
