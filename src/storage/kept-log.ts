import { messageOf } from '../core/theory/thrown';
import type { Teller } from '../listeners/teller';
/**
 * Rows of a log in the browser's own database: each is written by itself, so that a long log
 * costs no more a bar than a short one, and tabs that write rows of their own do not meet.
 */
import { createDatabase } from './database';
import type { Writing } from './kept-values';

/** A row: anything that a database can hold and that has an id. */
export type LogRow = Readonly<Record<string, unknown>> & { readonly id: string };

/** What the storage holds. */
export type LogReading =
  | { readonly kind: 'rows'; readonly rows: readonly unknown[] }
  | { readonly kind: 'refused'; readonly detail: string };

/** A place for rows. No method rejects. */
export interface KeptLog {
  read(): Promise<LogReading>;
  /** Writes rows, each in place of the one with its id. */
  put(rows: readonly LogRow[]): Promise<Writing>;
  /** Deletes rows; null deletes all. */
  remove(ids: readonly string[] | null): Promise<Writing>;
  /** Calls back with what another tab has changed. Returns the unsubscriber. */
  onChangedElsewhere(listener: (change: LogChange) => void): () => void;
}

/** What a tab has written or deleted; `removed` is null where that was all. */
export interface LogChange {
  readonly put: readonly unknown[];
  readonly removed: readonly string[] | null;
}

/** What another tab told; null where it is not of this program's making. */
const parseChange = (data: unknown): LogChange | null => {
  if (typeof data !== 'object' || data === null || !('put' in data) || !('removed' in data)) return null;
  const { put, removed } = data;
  if (!Array.isArray(put)) return null;
  if (removed === null) return { put, removed };
  return Array.isArray(removed)
    ? { put, removed: removed.filter((id): id is string => typeof id === 'string') }
    : null;
};

/**
 * @param openFactory gives the browser's databases, or throws where it refuses them.
 * @param teller tells the other tabs.
 * @param name of the database.
 */
export const createKeptLog = (
  openFactory: () => IDBFactory,
  teller?: Teller,
  name = 'combshed-log',
): KeptLog => {
  const database = createDatabase({ database: name, store: 'rows', keyPath: 'id' }, openFactory);
  const change = async (
    told: LogChange,
    ask: (store: IDBObjectStore) => IDBRequest | null,
  ): Promise<Writing> => {
    const writing = await database.write(ask);
    if (writing.kind === 'written') teller?.postMessage(told);
    return writing;
  };
  return {
    read: async () => {
      try {
        const rows = await database.read((store) => store.getAll());
        return { kind: 'rows', rows: Array.isArray(rows) ? rows : [] };
      } catch (error) {
        return { kind: 'refused', detail: messageOf(error) };
      }
    },
    put: (rows) =>
      change({ put: rows, removed: [] }, (store) =>
        rows.reduce<IDBRequest | null>((_, row) => store.put(row), null),
      ),
    remove: (ids) =>
      change({ put: [], removed: ids }, (store) =>
        ids === null ? store.clear() : ids.reduce<IDBRequest | null>((_, id) => store.delete(id), null),
      ),
    onChangedElsewhere: (listener) => {
      const onMessage = ({ data }: MessageEvent): void => {
        const told = parseChange(data);
        if (told !== null) listener(told);
      };
      teller?.addEventListener('message', onMessage);
      return () => teller?.removeEventListener('message', onMessage);
    },
  };
};
