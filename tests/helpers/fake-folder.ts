import { createFileSaver, type SavingGround } from '../../src/storage/save-file';

/** Milliseconds. */
export const MINUTE = 60_000;

/** Enough of a folder for the saver: writes at a place, and hands out what is closed. */
const createFakeFolder = () => {
  const files = new Map<string, { bytes: number[]; lastModified: number; locked: boolean }>();
  let refuse: DOMException | null = null;
  let now = 100 * MINUTE;
  const writableOf = (name: string) => {
    const bytes: number[] = [];
    let open = true;
    /** A stream that was closed or aborted refuses everything (Streams Standard). */
    const check = (): void => {
      if (refuse) throw refuse;
      if (!open) throw new TypeError('the stream is closed');
    };
    return {
      write: async (what: Uint8Array | { position: number; data: Uint8Array }) => {
        check();
        const [position, data] =
          what instanceof Uint8Array ? [bytes.length, what] : [what.position, what.data];
        for (const [i, byte] of data.entries()) bytes[position + i] = byte;
      },
      close: async () => {
        check();
        open = false;
        files.set(name, { bytes, lastModified: now, locked: false });
      },
      abort: async () => {
        open = false;
      },
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

/** The real saver on a folder or without one; `downloads` is what it handed over. */
export const openSaver = (kind: 'disk' | 'memory') => {
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
