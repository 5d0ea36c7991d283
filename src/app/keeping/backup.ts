import { backupText, readBackup } from '../../core/book/backup';
import { withNewIds } from '../../core/book/merge-items';
import { parseSettings } from '../../core/settings/parse-settings';
import type { Settings } from '../../core/settings/settings';
import type { FileSaver } from '../../storage/save-file';
import type { Keeper } from './keeper';

/** What the page can ask for about everything that is kept. */
export interface BackupCommands {
  /** Hands everything over as one file. Returns what to tell the player. */
  saveEverything(): Promise<string>;
  /**
   * Puts what such a file holds beside what is kept. Returns what became of it, in sentences.
   * @param withChoices whether the choices on the stand are taken from the file too.
   */
  restoreEverything(text: string, withChoices: boolean): Promise<readonly string[]>;
}

interface Needs {
  readonly keeper: Keeper;
  readonly saver: FileSaver;
  readonly store: { getState(): { readonly settings: Settings } };
  readonly apply: (settings: Settings) => void;
}

const FILE_NAME = 'combshed-everything.json';

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

/** Says what became of the things of one shelf; nothing where there were none. */
const outcome = (
  noun: string,
  { added, known, copied }: Record<'added' | 'known' | 'copied', number>,
): string => {
  const parts = [
    ...(added > 0 ? [`${counted(added, noun)} added`] : []),
    ...(copied > 0 ? [`${copied} of them beside one that has become different`] : []),
    ...(known > 0 ? [`${counted(known, noun)} here already`] : []),
  ];
  return parts.length === 0 ? '' : `${parts.join(', ')}.`;
};

/** Everything that is kept, in one file and back. */
export const createBackupCommands = ({ store, keeper, saver, apply }: Needs): BackupCommands => ({
  saveEverything: async () => {
    const shelves = Object.fromEntries(keeper.shelves.all().map(([name, shelf]) => [name, shelf.items()]));
    const bytes = new TextEncoder().encode(backupText(store.getState().settings, shelves));
    const writing = await saver.give(FILE_NAME, 'application/json', bytes);
    return writing.kind === 'written'
      ? `Handed over as ${FILE_NAME}.`
      : 'The file could not be made: this browser gave no room for it.';
  },
  restoreEverything: async (text, withChoices) => {
    const backup = readBackup(text);
    if ('trouble' in backup) return [backup.trouble];
    const told: string[] = [...backup.problems];
    const newIds = new Map<string, string>();
    for (const [name, shelf] of keeper.shelves.all()) {
      const taken = shelf.takeIn((backup.shelves[name] ?? []).map((thing) => withNewIds(thing, newIds)));
      for (const [from, to] of taken.newIds) newIds.set(from, to);
      told.push(outcome(shelf.noun, taken), ...taken.problems);
    }
    if (withChoices) {
      const { settings: choices, problems } = parseSettings(withNewIds(backup.settings, newIds));
      apply(choices);
      told.push('The choices on the stand are those of the file.', ...problems);
    }
    const sentences = told.filter((sentence) => sentence !== '');
    return sentences.length === 0 ? ['The file holds nothing that is not here.'] : sentences;
  },
});
