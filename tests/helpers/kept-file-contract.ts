import type { KeptFile } from '../../src/storage/kept-file';

/**
 * What the program relies on in a kept file. The same list is held against the one in memory that tests use, the real
 * one on a database in memory, and the real one in a browser. Each `act` is carried into the browser as text: it may
 * use nothing but its argument.
 */
export interface KeptFileBehaviour {
  readonly does: string;
  readonly act: (kept: KeptFile) => Promise<unknown>;
  readonly expected: unknown;
}

export const KEPT_FILE_BEHAVIOURS: readonly KeptFileBehaviour[] = [
  {
    does: 'has nothing at first, and bears forgetting it',
    act: async (kept) => [await kept.read(), await kept.forget(), await kept.read()],
    expected: [{ kind: 'nothing' }, { kind: 'written' }, { kind: 'nothing' }],
  },
  {
    does: 'gives back the file written last, with its name',
    act: async (kept) => {
      const answers = [
        await kept.write('one.sf2', new Blob(['first'])),
        await kept.write('two.sf2', new Blob(['second'])),
      ];
      const reading = await kept.read();
      return [answers, reading.kind === 'file' && [reading.name, await reading.file.text()]];
    },
    expected: [
      [{ kind: 'written' }, { kind: 'written' }],
      ['two.sf2', 'second'],
    ],
  },
  {
    does: 'has nothing once it was forgotten, and takes another file',
    act: async (kept) => {
      await kept.write('one.sf2', new Blob(['first']));
      const forgotten = [await kept.forget(), await kept.forget(), await kept.read()];
      await kept.write('two.sf2', new Blob([]));
      const reading = await kept.read();
      return [forgotten, reading.kind === 'file' && [reading.name, reading.file.size]];
    },
    expected: [
      [{ kind: 'written' }, { kind: 'written' }, { kind: 'nothing' }],
      ['two.sf2', 0],
    ],
  },
];
