/**
 * Files given to the player as downloads. A file that grows is written to the browser's own disk space first (the
 * origin private file system of the File System Standard) and handed over from there, so that its length does not
 * count in memory; where a browser has none, its pieces are kept as blobs.
 */
import { messageOf } from '../core/theory/thrown';
import type { Writing } from './kept-values';

/** A file that is written piece by piece. No method rejects. */
export interface GrowingFile {
  write(bytes: Uint8Array): Promise<Writing>;
  /** Writes over the first bytes, as many as given; no more than were written at first. */
  rewriteStart(bytes: Uint8Array): Promise<Writing>;
  /** Hands the file over as a download. Afterwards it refuses to be written or handed over again. */
  save(): Promise<Writing>;
  /** Throws the file away; idempotent. Afterwards it refuses to be written or handed over. */
  discard(): Promise<void>;
}

/** Gets files out of the browser. */
export interface FileSaver {
  /** Hands a small file over as a download. @param type its media type. */
  give(name: string, type: string, bytes: Uint8Array): Promise<Writing>;
  /** Begins a file that grows. */
  open(name: string, type: string): Promise<GrowingFile>;
}

/** What the saver needs of the browser; tests hand in their own. */
export interface SavingGround {
  /** The folder on the browser's disk, or a rejection where there is none. */
  readonly openFolder: () => Promise<FileSystemDirectoryHandle>;
  /** Starts the download of a blob. */
  readonly download: (blob: Blob, name: string) => void;
  readonly later: (action: () => void, milliseconds: number) => void;
  readonly now: () => number;
}

const FOLDER = 'take-away';
/** A download from the browser's own disk is done by then, even of an hour of music. */
const KEPT_MS = 10 * 60_000;

/** Shows a download to the browser. */
const download = (blob: Blob, name: string): void => {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), KEPT_MS);
};

/** The real browser. */
export const SAVING_GROUND: SavingGround = {
  openFolder: async () =>
    (await navigator.storage.getDirectory()).getDirectoryHandle(FOLDER, { create: true }),
  download,
  later: (action, milliseconds) => void setTimeout(action, milliseconds),
  now: () => Date.now(),
};

const failure = (error: unknown): Writing => {
  if (error instanceof DOMException && error.name === 'QuotaExceededError') return { kind: 'full' };
  return { kind: 'refused', detail: messageOf(error) };
};

const tried = async (act: () => Promise<void>): Promise<Writing> => {
  try {
    await act();
    return { kind: 'written' };
  } catch (error) {
    return failure(error);
  }
};

/** A copy that nobody else can write to: blobs and streams want no shared memory. */
const own = (bytes: Uint8Array): Uint8Array<ArrayBuffer> => new Uint8Array(bytes);

const openInMemory = (name: string, type: string, ground: SavingGround): GrowingFile => {
  /** Null once the file was handed over or thrown away. */
  let parts: Blob[] | null = [];
  const openParts = (): Blob[] => {
    if (parts === null) throw new Error(`${name} is closed`);
    return parts;
  };
  return {
    write: (bytes) => tried(async () => void openParts().push(new Blob([own(bytes)]))),
    rewriteStart: (bytes) =>
      tried(async () => {
        const rest = new Blob(openParts()).slice(bytes.length);
        parts = [new Blob([own(bytes)]), rest];
      }),
    save: () =>
      tried(async () => {
        ground.download(new Blob(openParts(), { type }), name);
        parts = null;
      }),
    discard: async () => {
      parts = null;
    },
  };
};

const openOnDisk = async (name: string, type: string, ground: SavingGround): Promise<GrowingFile> => {
  const folder = await ground.openFolder();
  // Leftovers cost room, not the file: a sweep that fails is tried again with the next one.
  await sweep(folder, ground.now()).catch(() => undefined);
  const entry = crypto.randomUUID();
  const handle = await folder.getFileHandle(entry, { create: true });
  const stream = await handle.createWritable();
  const remove = (): Promise<void> => folder.removeEntry(entry).catch(() => undefined);
  return {
    write: (bytes) => tried(() => stream.write(own(bytes))),
    rewriteStart: (bytes) => tried(() => stream.write({ type: 'write', position: 0, data: own(bytes) })),
    save: () =>
      tried(async () => {
        await stream.close();
        const file = await handle.getFile();
        ground.download(file.slice(0, file.size, type), name);
        ground.later(() => void remove(), KEPT_MS);
      }),
    discard: async () => {
      await stream.abort().catch(() => undefined);
      await remove();
    },
  };
};

/** Takes away what earlier visits left; a file another tab still writes is locked and stays. */
const sweep = async (folder: FileSystemDirectoryHandle, now: number): Promise<void> => {
  for await (const handle of folder.values()) {
    if (handle.kind !== 'file') continue;
    const { lastModified } = await handle.getFile();
    if (now - lastModified > KEPT_MS) await folder.removeEntry(handle.name).catch(() => undefined);
  }
};

/** Gives files to the player by way of the browser's downloads. */
export const createFileSaver = (ground: SavingGround = SAVING_GROUND): FileSaver => ({
  give: (name, type, bytes) => tried(async () => ground.download(new Blob([own(bytes)], { type }), name)),
  // Without a disk of its own (private windows of some browsers, older ones) the page's memory has to do.
  open: (name, type) => openOnDisk(name, type, ground).catch(() => openInMemory(name, type, ground)),
});
