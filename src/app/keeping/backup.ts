import { backupText, readBackup } from '../../core/book/backup';
import { withNewIds } from '../../core/book/merge-items';
import { parseSettings } from '../../core/settings/parse-settings';
import type { Settings } from '../../core/settings/settings';
import { cutText } from '../../core/theory/kept-text';
import { counted } from '../../core/theory/wording';
import type { FileSaver } from '../../storage/save-file';
import type { Keeper } from './keeper';

/** What the page can ask for about everything that is kept. */
export interface BackupCommands {
  /**
   * Hands everything over as one file. Returns what to tell the player.
   * @param large whether what is large goes along: takes.
   */
  saveEverything(large?: boolean): Promise<string>;
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

/** Things as `2 songs`, by commas. */
const listOf = (counts: readonly (readonly [noun: string, count: number])[]): string =>
  counts
    .filter(([, count]) => count > 0)
    .map(([noun, count]) => `, ${counted(count, noun)}`)
    .join('');

/** What a file holds that nothing here keeps. */
const strangers = (names: readonly string[]): readonly string[] =>
  names.map((name) => `What the file calls “${cutText(name, 40)}” is not known here and was left out.`);

/** Everything that is kept, in one file and back. */
export const createBackupCommands = ({ store, keeper, saver, apply }: Needs): BackupCommands => ({
  saveEverything: async (large = false) => {
    const wanted = (await keeper.shelves.all()).filter(([, shelf]) => large || !shelf.large);
    const shelves = await Promise.all(
      wanted.map(async ([name, shelf]) => [name, await shelf.items(), shelf] as const),
    );
    const things = Object.fromEntries(shelves.map(([name, items]) => [name, items]));
    const bytes = new TextEncoder().encode(backupText(store.getState().settings, things));
    const writing = await saver.give(FILE_NAME, 'application/json', bytes);
    return writing.kind === 'written'
      ? `Handed over as ${FILE_NAME}: your choices${listOf(shelves.map(([, items, { noun }]) => [noun, items.length]))}.`
      : 'The file could not be made: this browser gave no room for it.';
  },
  restoreEverything: async (text, withChoices) => {
    const backup = readBackup(text);
    if ('trouble' in backup) return [backup.trouble];
    const told: string[] = [...backup.problems];
    const newIds = new Map<string, string>();
    const open = await keeper.shelves.all();
    for (const [name, shelf] of open) {
      const things = (backup.shelves[name] ?? []).map((thing) => withNewIds(thing, newIds));
      const taken = await shelf.takeIn(things);
      for (const [from, to] of taken.newIds) newIds.set(from, to);
      told.push(outcome(shelf.noun, taken), ...taken.problems);
    }
    const known = new Set(open.map(([name]) => name));
    told.push(...strangers(Object.keys(backup.shelves).filter((name) => !known.has(name))));
    if (withChoices && backup.settings === undefined) {
      told.push('The file holds no choices, so those on the stand stay.');
    } else if (withChoices) {
      const { settings: choices, problems } = parseSettings(withNewIds(backup.settings, newIds));
      apply(choices);
      told.push('The choices on the stand are those of the file.', ...problems);
    }
    const sentences = told.filter((sentence) => sentence !== '');
    return sentences.length === 0 ? ['The file holds nothing that is not here.'] : sentences;
  },
});
