import { storableSettings } from '../settings/parse-settings';
import type { Settings } from '../settings/settings';
import { isRecord } from '../theory/is-record';
import { cutText } from '../theory/kept-text';

/** The version written with every file; a larger one comes from a newer program. */
const BACKUP_VERSION = 1;

/** Longest file that is read, in characters: the takes a browser keeps, as text, and far more than anything else. */
const LONGEST_BACKUP = 200_000_000;

/** Things by the shelf they lie on, as they are stored. */
export type ShelvedThings = Readonly<Record<string, readonly unknown[]>>;

/** A file with everything that is kept. */
export const backupText = (settings: Settings, shelves: ShelvedThings): string =>
  JSON.stringify(
    { program: 'combshed', version: BACKUP_VERSION, settings: storableSettings(settings), shelves },
    null,
    1,
  );

/** What is in such a file, unread as yet; or why it cannot be used. */
export type ReadBackup =
  | { readonly shelves: ShelvedThings; readonly settings: unknown; readonly problems: readonly string[] }
  | { readonly trouble: string };

const parse = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
};

/** Reads a file that should hold everything. Never throws; what is on the shelves is left to those who know it. */
export const readBackup = (text: string): ReadBackup => {
  if (text.length > LONGEST_BACKUP) {
    return { trouble: 'This file is far too long to come from this program; nothing was taken from it.' };
  }
  const value = parse(text);
  if (!isRecord(value) || value.program !== 'combshed' || !isRecord(value.shelves)) {
    return {
      trouble:
        'This is no file that “Save everything” has made, or it is damaged; nothing was taken from it.',
    };
  }
  const problems: string[] = [];
  if (typeof value.version === 'number' && value.version > BACKUP_VERSION) {
    problems.push('The file comes from a newer version of this program; what is known here was read.');
  }
  const shelves: Record<string, readonly unknown[]> = {};
  for (const [name, items] of Object.entries(value.shelves)) {
    if (Array.isArray(items)) shelves[name] = items;
    else problems.push(`What the file calls “${cutText(name, 40)}” is no list and was left out.`);
  }
  return { shelves, settings: value.settings, problems };
};
