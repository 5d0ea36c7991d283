import { describe, expect, it } from 'vitest';
import type { FileSaver } from '../../../src/storage/save-file';
import { openSaver } from '../../helpers/fake-folder';
import { createFakeTakeAway } from '../../helpers/fake-take-away';
import { FILE_SAVER_BEHAVIOURS } from '../../helpers/file-saver-contract';

interface Saving {
  readonly saver: FileSaver;
  /** Name, type and bytes of what was handed over. */
  readonly given: () => Promise<readonly unknown[]>;
}

const real = (kind: 'disk' | 'memory') => (): Saving => {
  const { saver, downloads } = openSaver(kind);
  const given = () =>
    Promise.all(downloads.map(async ({ name, type, bytes }) => [name, type, await bytes] as const));
  return { saver, given };
};

const fake = (): Saving => {
  const { saver, files } = createFakeTakeAway();
  const given = async () =>
    files.filter(({ fate }) => fate === 'saved').map(({ name, type, bytes }) => [name, type, bytes]);
  return { saver, given };
};

describe.each([
  { where: 'nowhere', open: fake },
  { where: 'on disk', open: real('disk') },
  { where: 'in memory', open: real('memory') },
])('a saver that keeps what grows $where', ({ open }) => {
  it.each(FILE_SAVER_BEHAVIOURS)('$does', async ({ act, expected, given }) => {
    const saving = open();
    expect(await act(saving.saver)).toEqual(expected);
    expect(await saving.given()).toEqual(given);
  });
});
