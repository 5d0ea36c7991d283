import { FIRST_SETTINGS } from '../../core/settings/defaults';
import { mergeSettings } from '../../core/settings/merge-settings';
import { parseSettings, storableSettings } from '../../core/settings/parse-settings';
import type { Settings } from '../../core/settings/settings';
import type { KeptValues } from '../../storage/kept-values';
import type { Keeper } from './keeper';
import { openRecord } from './kept-record';
import type { Notice } from './notice';

/** The settings as they are kept. */
export interface KeptSettings {
  /** Keeps what was changed since they were kept last, and leaves what other tabs changed. */
  keep(settings: Settings): void;
  dispose(): void;
}

/** All choices wait to be written as one change. */
const CHOICES = 'choices';

interface Options {
  readonly kept: KeptValues;
  readonly keeper: Keeper;
  /** As this tab read them first; what other tabs have kept since is theirs. */
  readonly opened: Settings;
  readonly onNotice: (notice: Notice) => void;
  /** Called with the calls another tab has typed: text is shared, choices are each tab's own until it is loaded. */
  readonly onCalls: (calls: string) => void;
}

/** Opens the kept settings. What cannot be read is set aside as it was and said; the rest is used. */
export const openSettings = ({ kept, keeper, opened, onNotice, onCalls }: Options): KeptSettings => {
  const record = openRecord<Settings>({
    kept,
    keeper,
    name: 'settings',
    empty: FIRST_SETTINGS,
    parse: (value) => {
      const { settings, problems } = parseSettings(value);
      return { value: settings, problems };
    },
    damaged: 'The kept settings are damaged; the usual ones are used instead.',
    storable: storableSettings,
    onNotice,
    onElsewhere: ({ trade }) => {
      // What this tab typed and could not keep yet is laid on the others' when it is written.
      if (record.isWaiting(CHOICES) || trade.calls === mine.trade.calls) return;
      mine = { ...mine, trade: { ...mine.trade, calls: trade.calls } };
      onCalls(trade.calls);
    },
  });
  /** This tab's settings as it kept them last. */
  let mine = opened;
  return {
    keep: (settings) => {
      const from = mine;
      if (record.change(CHOICES, (onto) => mergeSettings(from, settings, onto))) mine = settings;
    },
    dispose: record.dispose,
  };
};
