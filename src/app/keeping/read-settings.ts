import { FIRST_SETTINGS } from '../../core/settings/defaults';
import { parseSettings } from '../../core/settings/parse-settings';
import type { Settings } from '../../core/settings/settings';
import type { KeptValues } from '../../storage/kept-values';

/** The settings as they can be read, for the first picture: what was wrong with them is said once they are opened. */
export const readSettings = (kept: KeptValues): Settings => {
  const reading = kept.read('settings');
  return reading.kind === 'value' ? parseSettings(reading.value).settings : FIRST_SETTINGS;
};
