/**
 * One file of the player's, with its name, in the browser's own database (Indexed Database API 3.0), which can hold what
 * is too large for other storage.
 */
import type { Writing } from './kept-values';

/** What the storage holds where a file may be. */
export type FileReading =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'file'; readonly name: string; readonly file: Blob }
  /** The browser does not let this page keep anything, or what it kept cannot be had. */
  | { readonly kind: 'refused'; readonly detail: string };

/** A place for one file. No method rejects. */
export interface KeptFile {
  read(): Promise<FileReading>;
  /** Keeps a file in place of the one before. */
  write(name: string, file: Blob): Promise<Writing>;
  forget(): Promise<Writing>;
}

const DATABASE = 'combshed';
const VERSION = 1;
const STORE = 'files';

const detailOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

const failure = (error: unknown): Writing =>
  error instanceof DOMException && error.name === 'QuotaExceededError'
    ? { kind: 'full' }
    : { kind: 'refused', detail: detailOf(error) };

const openDatabase = (factory: IDBFactory): Promise<IDBDatabase> =>
  new Promise((resolve, reject) => {
    const request = factory.open(DATABASE, VERSION);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

/** Carries one request out and resolves with its result once it is safe in the database. */
const carryOut = async (
  factory: IDBFactory,
  mode: IDBTransactionMode,
  ask: (store: IDBObjectStore) => IDBRequest,
): Promise<unknown> => {
  const database = await openDatabase(factory);
  try {
    return await new Promise((resolve, reject) => {
      const transaction = database.transaction(STORE, mode);
      const request = ask(transaction.objectStore(STORE));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onabort = () => reject(transaction.error ?? request.error);
    });
  } finally {
    database.close();
  }
};

const parseFile = (value: unknown): FileReading => {
  if (typeof value !== 'object' || value === null || !('name' in value) || !('file' in value))
    return { kind: 'nothing' };
  const { name, file } = value;
  return typeof name === 'string' && file instanceof Blob
    ? { kind: 'file', name, file }
    : { kind: 'nothing' };
};

/**
 * @param key tells this file from others of the program.
 * @param openFactory gives the browser's databases, or throws where it refuses them.
 */
export const createKeptFile = (key: string, openFactory: () => IDBFactory): KeptFile => {
  const writing = async (ask: (store: IDBObjectStore) => IDBRequest): Promise<Writing> => {
    try {
      await carryOut(openFactory(), 'readwrite', ask);
      return { kind: 'written' };
    } catch (error) {
      return failure(error);
    }
  };
  return {
    read: async () => {
      try {
        return parseFile(await carryOut(openFactory(), 'readonly', (store) => store.get(key)));
      } catch (error) {
        return { kind: 'refused', detail: detailOf(error) };
      }
    },
    write: (name, file) => writing((store) => store.put({ name, file }, key)),
    forget: () => writing((store) => store.delete(key)),
  };
};
