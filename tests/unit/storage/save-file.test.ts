import { describe, expect, it } from 'vitest';
import { createFileSaver, type SavingGround } from '../../../src/storage/save-file';

const MINUTE = 60_000;

/** Enough of a folder for the saver: writes at a place, and hands out what is closed. */
const createFakeFolder = () => {
  const files = new Map<string, { bytes: number[]; lastModified: number; locked: boolean }>();
  let refuse: DOMException | null = null;
  let now = 100 * MINUTE;
  const writableOf = (name: string) => {
    const bytes: number[] = [];
    return {
      write: async (what: Uint8Array | { position: number; data: Uint8Array }) => {
        if (refuse) throw refuse;
        const [position, data] =
          what instanceof Uint8Array ? [bytes.length, what] : [what.position, what.data];
        for (const [i, byte] of data.entries()) bytes[position + i] = byte;
      },
      close: async () => {
        if (refuse) throw refuse;
        files.set(name, { bytes, lastModified: now, locked: false });
      },
      abort: async () => undefined,
    };
  };
  const handleOf = (name: string) => ({
    kind: 'file' as const,
    name,
    createWritable: async () => writableOf(name),
    getFile: async () => {
      const file = files.get(name);
      return new File([Uint8Array.from(file?.bytes ?? [])], name, { lastModified: file?.lastModified ?? 0 });
    },
  });
  const folder = {
    getFileHandle: async (name: string) => {
      files.set(name, { bytes: [], lastModified: now, locked: false });
      return handleOf(name);
    },
    removeEntry: async (name: string) => {
      if (files.get(name)?.locked) throw new DOMException('locked', 'NoModificationAllowedError');
      files.delete(name);
    },
    async *values() {
      for (const name of [...files.keys()]) yield handleOf(name);
    },
  };
  return {
    files,
    folder: folder as unknown as FileSystemDirectoryHandle,
    refuse: (error: DOMException | null) => {
      refuse = error;
    },
    clock: () => now,
    wait: (milliseconds: number) => {
      now += milliseconds;
    },
  };
};

const open = (kind: 'disk' | 'memory') => {
  const disk = createFakeFolder();
  const downloads: { name: string; type: string; bytes: Promise<number[]> }[] = [];
  const later: (() => void)[] = [];
  const ground: SavingGround = {
    openFolder: async () => {
      if (kind === 'memory') throw new DOMException('not here', 'SecurityError');
      return disk.folder;
    },
    download: (blob, name) => {
      const bytes = blob.arrayBuffer().then((buffer) => [...new Uint8Array(buffer)]);
      downloads.push({ name, type: blob.type, bytes });
    },
    later: (action) => later.push(action),
    now: disk.clock,
  };
  return { disk, downloads, later, saver: createFileSaver(ground) };
};

describe.each(['disk', 'memory'] as const)('a growing file, kept on %s', (kind) => {
  it('is what was written, its start written over, under its name and type', async () => {
    const { saver, downloads } = open(kind);
    const file = await saver.open('a.wav', 'audio/wav');
    await file.write(Uint8Array.of(0, 0, 1));
    await file.write(Uint8Array.of(2, 3));
    await file.rewriteStart(Uint8Array.of(8, 9));
    expect(await file.save()).toEqual({ kind: 'written' });
    expect(downloads.map(({ name, type }) => [name, type])).toEqual([['a.wav', 'audio/wav']]);
    expect(await downloads[0]?.bytes).toEqual([8, 9, 1, 2, 3]);
  });

  it('leaves nothing when it is thrown away', async () => {
    const { saver, downloads, disk } = open(kind);
    const file = await saver.open('a.wav', 'audio/wav');
    await file.write(Uint8Array.of(1));
    await file.discard();
    expect(downloads).toEqual([]);
    expect(disk.files.size).toBe(0);
  });

  it('does not hold on to the bytes it was given', async () => {
    const { saver, downloads } = open(kind);
    const file = await saver.open('a.wav', 'audio/wav');
    const bytes = Uint8Array.of(1, 2);
    await file.write(bytes);
    bytes.fill(7);
    await file.save();
    expect(await downloads[0]?.bytes).toEqual([1, 2]);
  });
});

describe('room on the disk', () => {
  it('says that the disk is full, whenever it becomes so', async () => {
    const { saver, disk, downloads } = open('disk');
    const file = await saver.open('a.wav', 'audio/wav');
    expect(await file.write(Uint8Array.of(1))).toEqual({ kind: 'written' });
    disk.refuse(new DOMException('full', 'QuotaExceededError'));
    expect(await file.write(Uint8Array.of(1))).toEqual({ kind: 'full' });
    expect(await file.rewriteStart(Uint8Array.of(1))).toEqual({ kind: 'full' });
    expect(await file.save()).toEqual({ kind: 'full' });
    expect(downloads).toEqual([]);
  });

  it('passes other refusals on in the browser’s words', async () => {
    const { saver, disk } = open('disk');
    const file = await saver.open('a.wav', 'audio/wav');
    disk.refuse(new DOMException('the disk is gone', 'InvalidStateError'));
    expect(await file.write(Uint8Array.of(1))).toEqual({ kind: 'refused', detail: 'the disk is gone' });
  });

  it('frees the room some time after the download began', async () => {
    const { saver, disk, later } = open('disk');
    const file = await saver.open('a.wav', 'audio/wav');
    await file.save();
    expect(disk.files.size).toBe(1);
    for (const action of later) action();
    await expect.poll(() => disk.files.size).toBe(0);
  });

  it('sweeps what earlier visits left, and spares the new and the locked', async () => {
    const { saver, disk } = open('disk');
    disk.files.set('old', { bytes: [1], lastModified: disk.clock() - 11 * MINUTE, locked: false });
    disk.files.set('busy', { bytes: [1], lastModified: disk.clock() - 99 * MINUTE, locked: true });
    disk.files.set('new', { bytes: [1], lastModified: disk.clock() - 9 * MINUTE, locked: false });
    await saver.open('a.wav', 'audio/wav');
    expect([...disk.files.keys()].slice(0, 2)).toEqual(['busy', 'new']);
    expect(disk.files.size).toBe(3);
  });
});

it('hands a small file over at once', async () => {
  const { saver, downloads, disk } = open('disk');
  expect(await saver.give('a.mid', 'audio/midi', Uint8Array.of(1, 2))).toEqual({ kind: 'written' });
  expect(await downloads[0]?.bytes).toEqual([1, 2]);
  expect(disk.files.size).toBe(0);
});
