import { describe, expect, it } from 'vitest';
import { createKeeper } from '../../../../src/app/keeping/keeper';
import type { Notice } from '../../../../src/app/keeping/notice';
import { openShelf, type ReadItem, type ShelfItem } from '../../../../src/app/keeping/shelf';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createFakeStorage, type FakeStorage } from '../../../helpers/fake-storage';

const parse = (value: unknown): ReadItem<ShelfItem> => {
  if (typeof value !== 'object' || value === null || !('id' in value) || !('name' in value))
    return { item: null, problems: ['One is no item.'] };
  return { item: { id: String(value.id), name: String(value.name) }, problems: [] };
};

const open = (storage: FakeStorage, read = parse) => {
  const notices: Notice[] = [];
  const seen: (readonly ShelfItem[])[] = [];
  const shelf = openShelf({
    kept: createKeptValues(() => storage, new EventTarget()),
    keeper: createKeeper({
      board: { post: (notice) => notices.push(notice), dismiss: () => {} },
      later: () => () => {},
    }),
    name: 'things',
    noun: 'thing',
    parse: read,
    onChange: (items) => seen.push(items),
    onNotice: (notice) => notices.push(notice),
  });
  return { shelf, notices, seen };
};

const names = (items: readonly ShelfItem[]): string[] => items.map(({ name }) => name);

describe('a shelf', () => {
  it('keeps what is put on it, in order, replacing by id', () => {
    const storage = createFakeStorage();
    const { shelf, seen } = open(storage);
    shelf.put({ id: '1', name: 'a' });
    shelf.put({ id: '2', name: 'b' });
    shelf.put({ id: '1', name: 'c' });
    expect(names(open(storage).shelf.items())).toEqual(['c', 'b']);
    expect(seen).toHaveLength(3);
  });

  it('does not destroy what another tab put there', () => {
    const storage = createFakeStorage();
    const [one, two] = [open(storage), open(storage)];
    one.shelf.put({ id: '1', name: 'from one' });
    two.shelf.put({ id: '2', name: 'from two' });
    one.shelf.remove('3');
    expect(names(open(storage).shelf.items())).toEqual(['from one', 'from two']);
  });

  it('keeps the items it can read, sets the whole aside and says so', () => {
    const raw = JSON.stringify([{ id: '1', name: 'good' }, 17]);
    const storage = createFakeStorage({ 'combshed.things': raw });
    const { shelf, notices } = open(storage);
    expect(names(shelf.items())).toEqual(['good']);
    expect(notices[0]?.text).toMatch(/One is no item\. A copy/);
    expect(storage.items.get('combshed.things.unread.1')).toBe(raw);
  });

  it('says once what is wrong with many, and how much more there is', () => {
    const bad = Array.from({ length: 5000 }, (_, i) => ({ id: `${i}`, name: i < 4000 ? '' : `bad ${i}` }));
    const storage = createFakeStorage({ 'combshed.things': JSON.stringify([17, ...bad]) });
    const { notices } = open(storage, (value) => {
      const { item } = parse(value);
      return { item, problems: [item?.name === '' ? 'One has no name.' : `Odd: ${item?.name}.`] };
    });
    expect(notices[0]?.text.length).toBeLessThan(400);
    expect(notices[0]?.text).toContain('One has no name. Odd: bad 4000.');
    expect(notices[0]?.text).toContain('996 sentences');
  });

  it('gives things of one id ids of their own, so that a change of one leaves the other', () => {
    const twins = [
      { id: '1', name: 'a' },
      { id: '1', name: 'b' },
      { id: '1', name: 'a' },
    ];
    const storage = createFakeStorage({ 'combshed.things': JSON.stringify(twins) });
    const { shelf } = open(storage);
    expect(shelf.items().map(({ id }) => id)).toEqual(['1', '1 2']);
    shelf.put({ id: '1', name: 'c' });
    expect(names(open(storage).shelf.items())).toEqual(['c', 'b']);
    shelf.remove('1');
    expect(names(open(storage).shelf.items())).toEqual(['b']);
  });

  it('goes on in memory when the storage is full', () => {
    const storage = createFakeStorage();
    const { shelf, notices } = open(storage);
    storage.refuse = new DOMException('full', 'QuotaExceededError');
    shelf.put({ id: '1', name: 'a' });
    shelf.put({ id: '2', name: 'b' });
    expect(names(shelf.items())).toEqual(['a', 'b']);
    expect(notices[0]?.text).toMatch(/full/);
    storage.refuse = null;
    shelf.put({ id: '3', name: 'c' });
    expect(names(open(storage).shelf.items())).toEqual(['a', 'b', 'c']);
  });
});
