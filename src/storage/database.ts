/** A database of one store in the browser (Indexed Database API 3.0), opened for each thing that is done with it. */
import type { Writing } from './kept-values';

/** What went wrong, in the browser's words. */
export const detailOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

const failure = (error: unknown): Writing =>
  error instanceof DOMException && error.name === 'QuotaExceededError'
    ? { kind: 'full' }
    : { kind: 'refused', detail: detailOf(error) };

/** Where a database is and what it holds. */
export interface DatabaseName {
  readonly database: string;
  readonly store: string;
  /** The field that tells one value from another; without it each is put under a key of its own. */
  readonly keyPath?: string;
}

type Ask = (store: IDBObjectStore) => IDBRequest | null;

const VERSION = 1;

/** @param openFactory gives the browser's databases, or throws where it refuses them. */
export const createDatabase = (
  { database: name, store, keyPath }: DatabaseName,
  openFactory: () => IDBFactory,
) => {
  const open = (): Promise<IDBDatabase> =>
    new Promise((resolve, reject) => {
      const request = openFactory().open(name, VERSION);
      request.onupgradeneeded = () =>
        request.result.createObjectStore(store, keyPath === undefined ? {} : { keyPath });
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  const carryOut = async (mode: IDBTransactionMode, ask: Ask): Promise<unknown> => {
    const database = await open();
    try {
      return await new Promise((resolve, reject) => {
        const transaction = database.transaction(store, mode);
        const request = ask(transaction.objectStore(store));
        transaction.oncomplete = () => resolve(request?.result);
        transaction.onabort = () => reject(transaction.error ?? request?.error);
      });
    } finally {
      database.close();
    }
  };
  return {
    /** Asks in a transaction that changes nothing; rejects with what went wrong. */
    read: (ask: Ask): Promise<unknown> => carryOut('readonly', ask),
    /** Carries requests out in one transaction, and resolves once all are safe or refused. */
    write: async (ask: Ask): Promise<Writing> => {
      try {
        await carryOut('readwrite', ask);
        return { kind: 'written' };
      } catch (error) {
        return failure(error);
      }
    },
  };
};
