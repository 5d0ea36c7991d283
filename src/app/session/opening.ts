import { createStore, type StoreApi } from 'zustand/vanilla';
import { isFormId } from '../../core/chart/forms';
import { NO_CHOICES } from '../../core/settings/choice-steps';
import { formChart, STANDARD_FORM, songKeyOf, tuneFor, withFittingRepeat } from '../../core/song/tune';
import { restingViews } from '../../core/song/views';
import type { KeptValues } from '../../storage/kept-values';
import { readSettings } from '../keeping/read-settings';
import { initialFeatures } from './features';
import type { SessionState } from './session-state';

/**
 * Whether the first picture can be drawn with what is here: a chart of the player's own has to be fetched and read, and
 * so does what draws a line, calls, the Keys drawing, plain words and names of notes that are not English.
 */
export const isWhole = ({ settings }: Pick<SessionState, 'settings'>): boolean => {
  const { formId, line, trade, drawing, plainWords, noteNames } = settings;
  const plain = !plainWords && noteNames === 'english';
  return isFormId(formId) && line.kind === 'none' && !trade.on && drawing === 'comb' && plain;
};

/**
 * The state the page is first drawn with: the song as the kept settings have it, and every feature before anything has
 * happened. What is wrong with the settings is said when the session joins, which reads them once more.
 */
export const openState = (kept: KeptValues): StoreApi<SessionState> => {
  const features = initialFeatures();
  const asked = readSettings(kept);
  const form = isFormId(asked.formId) ? asked.formId : STANDARD_FORM;
  const chart = formChart(asked, form, songKeyOf(asked));
  const settings = withFittingRepeat(asked, chart.bars.length);
  const tune = tuneFor(settings, chart);
  return createStore<SessionState>(() => ({
    settings,
    tune,
    status: { kind: 'asleep' },
    ...restingViews(tune, 0),
    lastChorus: null,
    harpHeard: null,
    muted: false,
    waiting: null,
    choices: NO_CHOICES,
    taken: '',
    notices: [],
    harpCase: [],
    ownTunings: [],
    ...features,
  }));
};
