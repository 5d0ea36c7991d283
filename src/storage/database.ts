/** A database of one store in the browser (Indexed Database API 3.0), opened when first asked. */
import { messageOf } from '../core/theory/thrown';
import type { Writing } from './kept-values';

const failure = (error: unknown): Writing =>
  error instanceof DOMException && error.name === 'QuotaExceededError'
    ? { kind: 'full' }
    : { kind: 'refused', detail: messageOf(error) };

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
  let opened: Promise<IDBDatabase> | null = null;
  const forget = (): void => {
    opened = null;
  };
  const openNow = (): Promise<IDBDatabase> =>
    new Promise((resolve, reject) => {
      const request = openFactory().open(name, VERSION);
      request.onupgradeneeded = () =>
        request.result.createObjectStore(store, keyPath === undefined ? {} : { keyPath });
      request.onsuccess = () => {
        const database = request.result;
        database.onclose = forget;
        database.onversionchange = () => {
          database.close();
          forget();
        };
        resolve(database);
      };
      request.onerror = () => reject(request.error);
    });
  /** Stays open: on a busy machine, to open it anew for every bar that is written took seconds. */
  const open = async (): Promise<IDBDatabase> => {
    opened ??= openNow();
    try {
      return await opened;
    } catch (error) {
      forget();
      throw error;
    }
  };
  const begin = async (mode: IDBTransactionMode): Promise<IDBTransaction> => {
    try {
      return (await open()).transaction(store, mode);
    } catch (error) {
      if (!(error instanceof DOMException && error.name === 'InvalidStateError')) throw error;
      // It was closed by the browser, which need not have said so yet.
      forget();
      return (await open()).transaction(store, mode);
    }
  };
  const carryOut = async (mode: IDBTransactionMode, ask: Ask): Promise<unknown> => {
    const transaction = await begin(mode);
    return new Promise((resolve, reject) => {
      const request = ask(transaction.objectStore(store));
      transaction.oncomplete = () => resolve(request?.result);
      transaction.onabort = () => reject(transaction.error ?? request?.error);
    });
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
