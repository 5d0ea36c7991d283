import { createKeptValues, type KeptValues, type StorageArea } from '../../src/storage/kept-values';
import { createFakeStorage, type FakeStorage } from './fake-storage';

/** The news of a change of the storage, for environments without a browser (HTML, "The StorageEvent interface"). */
class FakeStorageEvent extends Event {
  readonly key: string | null;
  readonly newValue: string | null;
  constructor(type: string, { key = null, newValue = null }: StorageEventInit = {}) {
    super(type);
    this.key = key;
    this.newValue = newValue;
  }
}

/** Tabs of one browser: they share a storage, and each is told what the others change there. */
export interface FakeTabs {
  readonly storage: FakeStorage;
  /** While true, no tab hears of changes: news of a storage comes late in browsers too. */
  deaf: boolean;
  /** Another tab: the storage as it sees it, and where it hears of changes. */
  openTab(): { readonly area: StorageArea; readonly events: EventTarget };
  /** What another tab keeps. */
  open(): KeptValues;
}

/** @param storage what the tabs share. */
export const createFakeTabs = (storage: FakeStorage = createFakeStorage()): FakeTabs => {
  if (!('StorageEvent' in globalThis)) Object.assign(globalThis, { StorageEvent: FakeStorageEvent });
  const tabs: EventTarget[] = [];
  const faked: FakeTabs = {
    storage,
    deaf: false,
    openTab: () => {
      const tab = new EventTarget();
      tabs.push(tab);
      const tell = (key: string, newValue: string | null): void => {
        if (faked.deaf) return;
        for (const each of tabs)
          if (each !== tab) each.dispatchEvent(new StorageEvent('storage', { key, newValue }));
      };
      const area = {
        get length() {
          return storage.length;
        },
        key: storage.key,
        getItem: storage.getItem,
        removeItem: (key: string) => {
          const before = storage.getItem(key);
          storage.removeItem(key);
          if (before !== null) tell(key, null);
        },
        setItem: (key: string, value: string) => {
          const before = storage.getItem(key);
          storage.setItem(key, value);
          if (before !== value) tell(key, value);
        },
      };
      return { area, events: tab };
    },
    open: () => {
      const { area, events } = faked.openTab();
      return createKeptValues(() => area, events);
    },
  };
  return faked;
};
