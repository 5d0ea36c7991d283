import { DEFAULT_SETTINGS } from '../core/settings/defaults';
import { parseSettings, storableSettings } from '../core/settings/parse-settings';
import type { Settings } from '../core/settings/settings';
import type { KeptValues, Writing } from '../storage/kept-values';
import type { Notice } from './session-state';

const NAME = 'settings';

export interface Loaded {
  readonly settings: Settings;
  readonly notices: readonly Notice[];
}

/** What to tell the player when something could not be kept; `null` when it was. */
export const writingNotice = (writing: Writing): Notice | null => {
  if (writing.kind === 'written') return null;
  const why =
    writing.kind === 'full'
      ? 'The browser’s storage for this page is full'
      : 'The browser does not let this page keep anything';
  return {
    id: 'storage',
    tone: 'trouble',
    text: `${why}: your choices hold until you close the page. Free some site data or allow it for this page, then change any setting to try again.`,
  };
};

/** Reads the kept settings. What cannot be read is set aside as it was and said; the rest is used. */
export const loadSettings = (kept: KeptValues): Loaded => {
  const reading = kept.read(NAME);
  if (reading.kind === 'nothing') return { settings: DEFAULT_SETTINGS, notices: [] };
  if (reading.kind === 'refused') {
    const notice = writingNotice(reading);
    return { settings: DEFAULT_SETTINGS, notices: notice ? [notice] : [] };
  }
  const { settings, problems } =
    reading.kind === 'value'
      ? parseSettings(reading.value)
      : {
          settings: DEFAULT_SETTINGS,
          problems: ['The kept settings are damaged; the usual ones are used instead.'],
        };
  if (problems.length === 0) return { settings, notices: [] };
  const aside = kept.setAside(NAME, reading.raw);
  const copy = aside.kind === 'written' ? ' A copy of what was there is kept in this browser.' : '';
  return {
    settings,
    notices: [{ id: 'unread-settings', tone: 'trouble', text: `${problems.join(' ')}${copy}` }],
  };
};

/** Writes the settings; returns what to tell the player when that failed. */
export const keepSettings = (kept: KeptValues, settings: Settings): Notice | null =>
  writingNotice(kept.write(NAME, storableSettings(settings)));
