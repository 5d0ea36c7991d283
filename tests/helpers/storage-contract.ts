import type { StorageArea } from '../../src/storage/kept-values';

/**
 * What the program relies on in a browser's storage, as the HTML standard has it ("Web storage"). The same list is
 * held against the storage in memory that tests use and against a real browser, so that the two cannot drift apart.
 * Each `act` is carried into the browser as text: it may use nothing but its argument.
 */
export interface StorageBehaviour {
  readonly does: string;
  readonly act: (area: StorageArea) => unknown;
  readonly expected: unknown;
  /** What another tab is told of it: names and new values. */
  readonly heard: readonly (readonly [string, string | null])[];
}

/** UTF-16 units a browser keeps for one origin: 5 MiB of them (Chromium; the standard suggests 5 megabytes). */
export const BROWSER_CAPACITY = 5 * 1024 * 1024;

export const STORAGE_BEHAVIOURS: readonly StorageBehaviour[] = [
  {
    does: 'gives back what was set, and null for what was not',
    act: (area) => {
      area.setItem('a', '1');
      return [area.getItem('a'), area.getItem('b'), area.length];
    },
    expected: ['1', null, 1],
    heard: [['a', '1']],
  },
  {
    does: 'replaces a value, and tells nobody of the same one again',
    act: (area) => {
      area.setItem('a', '1');
      area.setItem('a', '2');
      area.setItem('a', '2');
      return [area.getItem('a'), area.length];
    },
    expected: ['2', 1],
    heard: [
      ['a', '1'],
      ['a', '2'],
    ],
  },
  {
    does: 'forgets what was removed, and bears the removal of nothing',
    act: (area) => {
      area.setItem('a', '1');
      area.removeItem('a');
      area.removeItem('a');
      return [area.getItem('a'), area.length];
    },
    expected: [null, 0],
    heard: [
      ['a', '1'],
      ['a', null],
    ],
  },
  {
    does: 'lists its keys, and null past the last one',
    act: (area) => {
      area.setItem('a', '1');
      area.setItem('b', '');
      return [[area.key(0), area.key(1)].sort(), area.key(2), area.getItem('b')];
    },
    expected: [['a', 'b'], null, ''],
    heard: [
      ['a', '1'],
      ['b', ''],
    ],
  },
  {
    does: 'throws when a value does not fit, and keeps the one before',
    act: (area) => {
      area.setItem('a', 'old');
      try {
        area.setItem('a', 'x'.repeat(20_000_000));
        return 'it fitted';
      } catch (error) {
        const isOne = error instanceof DOMException;
        return [isOne && error.name, area.getItem('a'), area.length];
      }
    },
    expected: ['QuotaExceededError', 'old', 1],
    heard: [['a', 'old']],
  },
  {
    does: 'has room again for a value as large as one that was removed',
    act: (area) => {
      area.setItem('a', 'x'.repeat(4_000_000));
      try {
        area.setItem('b', 'y'.repeat(4_000_000));
        return 'both fitted';
      } catch {
        area.removeItem('a');
        area.setItem('c', 'y'.repeat(3_999_999));
        return [area.getItem('a'), area.getItem('b'), area.getItem('c')?.length];
      }
    },
    expected: [null, null, 3_999_999],
    heard: [
      ['a', 'x'.repeat(4_000_000)],
      ['a', null],
      ['c', 'y'.repeat(3_999_999)],
    ],
  },
];
