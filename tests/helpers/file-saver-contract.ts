import type { FileSaver } from '../../src/storage/save-file';

/** What the program relies on in what hands files over: one list for the one in memory that tests use and the real one. */
export interface FileSaverBehaviour {
  readonly does: string;
  readonly act: (saver: FileSaver) => Promise<unknown>;
  /** What the act comes to, and the files that were handed over: name, type, bytes. */
  readonly expected: unknown;
  readonly given: readonly (readonly [string, string, readonly number[]])[];
}

export const FILE_SAVER_BEHAVIOURS: readonly FileSaverBehaviour[] = [
  {
    does: 'hands a small file over at once',
    act: (saver) => saver.give('a.mid', 'audio/midi', Uint8Array.of(1, 2)),
    expected: { kind: 'written' },
    given: [['a.mid', 'audio/midi', [1, 2]]],
  },
  {
    does: 'hands over what was written, its start written over',
    act: async (saver) => {
      const file = await saver.open('a.wav', 'audio/wav');
      return [
        await file.write(Uint8Array.of(0, 0, 1)),
        await file.write(Uint8Array.of(2, 3)),
        await file.rewriteStart(Uint8Array.of(8, 9)),
        await file.save(),
      ].map(({ kind }) => kind);
    },
    expected: ['written', 'written', 'written', 'written'],
    given: [['a.wav', 'audio/wav', [8, 9, 1, 2, 3]]],
  },
  {
    does: 'does not hold on to the bytes it was given',
    act: async (saver) => {
      const bytes = Uint8Array.of(1, 2);
      const file = await saver.open('a.wav', 'audio/wav');
      await file.write(bytes);
      bytes.fill(7);
      await file.save();
    },
    expected: undefined,
    given: [['a.wav', 'audio/wav', [1, 2]]],
  },
  {
    does: 'hands nothing over that was thrown away, however often',
    act: async (saver) => {
      const file = await saver.open('a.wav', 'audio/wav');
      await file.write(Uint8Array.of(1));
      await file.discard();
      await file.discard();
    },
    expected: undefined,
    given: [],
  },
  {
    does: 'refuses to write to a file, and to hand it over again, once it is handed over',
    act: async (saver) => {
      const file = await saver.open('a.wav', 'audio/wav');
      await file.write(Uint8Array.of(1));
      await file.save();
      return [
        await file.write(Uint8Array.of(2)),
        await file.rewriteStart(Uint8Array.of(2)),
        await file.save(),
      ].map(({ kind }) => kind);
    },
    expected: ['refused', 'refused', 'refused'],
    given: [['a.wav', 'audio/wav', [1]]],
  },
  {
    does: 'refuses to hand over what was thrown away',
    act: async (saver) => {
      const file = await saver.open('a.wav', 'audio/wav');
      await file.write(Uint8Array.of(1));
      await file.discard();
      return (await file.save()).kind;
    },
    expected: 'refused',
    given: [],
  },
];
