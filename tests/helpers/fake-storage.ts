import type { StorageArea } from '../../src/storage/kept-values';

/** A storage area in memory. */
export interface FakeStorage extends StorageArea {
  readonly items: Map<string, string>;
  /** Thrown by every write while set. */
  refuse: Error | null;
}

/** A storage area in memory holding `items` at first. */
export const createFakeStorage = (items: Readonly<Record<string, string>> = {}): FakeStorage => {
  const held = new Map(Object.entries(items));
  return {
    items: held,
    refuse: null,
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
      held.set(key, value);
    },
  };
};
