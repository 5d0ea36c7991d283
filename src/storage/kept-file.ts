/**
 * One file of the player's, with its name, in the browser's own database, which can hold what
 * is too large for other storage.
 */
import { messageOf } from '../core/theory/thrown';
import { createDatabase } from './database';
import type { Writing } from './kept-values';

/** What the storage holds where a file may be. */
export type FileReading =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'file'; readonly name: string; readonly file: Blob }
  /** Something lies there that is no file, or none any more. */
  | { readonly kind: 'no file' }
  /** The browser does not let this page keep anything, or what it kept cannot be had. */
  | { readonly kind: 'refused'; readonly detail: string };

/** A place for one file. No method rejects. */
export interface KeptFile {
  read(): Promise<FileReading>;
  /** Keeps a file in place of the one before. */
  write(name: string, file: Blob): Promise<Writing>;
  forget(): Promise<Writing>;
}

const parseFile = (value: unknown): FileReading => {
  if (value === undefined) return { kind: 'nothing' };
  if (typeof value !== 'object' || value === null || !('name' in value) || !('file' in value))
    return { kind: 'no file' };
  const { name, file } = value;
  return typeof name === 'string' && file instanceof Blob
    ? { kind: 'file', name, file }
    : { kind: 'no file' };
};

/**
 * @param key tells this file from others of the program.
 * @param openFactory gives the browser's databases, or throws where it refuses them.
 */
export const createKeptFile = (key: string, openFactory: () => IDBFactory): KeptFile => {
  const database = createDatabase({ database: 'combshed', store: 'files' }, openFactory);
  return {
    read: async () => {
      try {
        return parseFile(await database.read((store) => store.get(key)));
      } catch (error) {
        return { kind: 'refused', detail: messageOf(error) };
      }
    },
    write: (name, file) => database.write((store) => store.put({ name, file }, key)),
    forget: () => database.write((store) => store.delete(key)),
  };
};
