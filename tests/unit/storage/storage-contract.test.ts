import { describe, expect, it } from 'vitest';
import type { StorageArea } from '../../../src/storage/kept-values';
import { createFakeStorage } from '../../helpers/fake-storage';
import { createFakeTabs } from '../../helpers/fake-tabs';
import { BROWSER_CAPACITY, STORAGE_BEHAVIOURS } from '../../helpers/storage-contract';

describe('the storage in memory', () => {
  it.each(STORAGE_BEHAVIOURS)('$does', ({ act, expected, heard }) => {
    const storage = createFakeStorage();
    storage.capacity = BROWSER_CAPACITY;
    const tabs = createFakeTabs(storage);
    const news: [string, string | null][] = [];
    tabs.openTab().events.addEventListener('storage', (event) => {
      if (event instanceof StorageEvent) news.push([event.key ?? '', event.newValue]);
    });
    const area: StorageArea = tabs.openTab().area;
    expect(act(area)).toEqual(expected);
    expect(news).toEqual(heard);
  });
});
