import type { StorageArea } from '../../src/storage/kept-values';

/** A storage area in memory. */
export interface FakeStorage extends StorageArea {
  readonly items: Map<string, string>;
  /** Thrown by every write while set. */
  refuse: Error | null;
  /** Most UTF-16 units of keys and values together. */
  capacity: number;
}

const sizeOf = (items: ReadonlyMap<string, string>): number =>
  [...items].reduce((sum, [key, value]) => sum + key.length + value.length, 0);

/** A storage area in memory holding `items` at first. */
export const createFakeStorage = (items: Readonly<Record<string, string>> = {}): FakeStorage => {
  const held = new Map(Object.entries(items));
  return {
    items: held,
    refuse: null,
    capacity: Number.POSITIVE_INFINITY,
    get length() {
      return held.size;
    },
    key: (i) => [...held.keys()][i] ?? null,
    getItem: (key) => held.get(key) ?? null,
    removeItem: (key) => {
      held.delete(key);
    },
    setItem(key, value) {
      if (this.refuse) throw this.refuse;
      if (sizeOf(new Map(held).set(key, value)) > this.capacity)
        throw new DOMException('no room', 'QuotaExceededError');
      held.set(key, value);
    },
  };
};
