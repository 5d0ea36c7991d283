import type { KeptLog } from '../../src/storage/kept-log';

/**
 * What the program relies on in a kept log. The same list is held against the one in memory that tests use, the real
 * one on a database in memory, and the real one in a browser. Each `act` is carried into the browser as text: it may
 * use nothing but its argument. It begins with an empty log.
 */
export const KEPT_LOG_BEHAVIOURS: readonly {
  readonly does: string;
  readonly act: (kept: KeptLog) => Promise<unknown>;
  readonly expected: unknown;
}[] = [
  {
    does: 'has no rows at first, and bears deleting them',
    act: async (kept) => [await kept.read(), await kept.remove(null), await kept.remove(['a'])],
    expected: [{ kind: 'rows', rows: [] }, { kind: 'written' }, { kind: 'written' }],
  },
  {
    does: 'keeps a row in place of the one with its id, and others beside it',
    act: async (kept) => {
      await kept.put([
        { id: 'a', bars: 1 },
        { id: 'b', bars: 1 },
      ]);
      await kept.put([{ id: 'a', bars: 2 }]);
      return kept.read();
    },
    expected: {
      kind: 'rows',
      rows: [
        { id: 'a', bars: 2 },
        { id: 'b', bars: 1 },
      ],
    },
  },
  {
    does: 'deletes one row or all of them',
    act: async (kept) => {
      await kept.put([{ id: 'a' }, { id: 'b' }, { id: 'c' }]);
      await kept.remove(['b', 'nothing']);
      const left = await kept.read();
      await kept.remove(null);
      return [left, await kept.read()];
    },
    expected: [
      { kind: 'rows', rows: [{ id: 'a' }, { id: 'c' }] },
      { kind: 'rows', rows: [] },
    ],
  },
];
