import { IDBFactory } from 'fake-indexeddb';
import { describe, expect, it } from 'vitest';
import { createKeptFile } from '../../../src/storage/kept-file';
import { createFakeOwnSounds } from '../../helpers/fake-own-sounds';
import { KEPT_FILE_BEHAVIOURS } from '../../helpers/kept-file-contract';

describe.each([
  { where: 'in memory', open: () => createFakeOwnSounds().shelf },
  {
    where: 'in a database',
    open: () => {
      const factory = new IDBFactory();
      return createKeptFile('sounds', () => factory);
    },
  },
])('a file kept $where', ({ open }) => {
  it.each(KEPT_FILE_BEHAVIOURS)('$does', async ({ act, expected }) => {
    expect(await act(open())).toEqual(expected);
  });
});
