import { SETTINGS, type Settings } from './settings';

/** What a stranger with a C harp finds: a medium shuffle in G, second position, draw bends on. */
export const DEFAULT_SETTINGS = Object.fromEntries(
  Object.entries(SETTINGS).map(([name, { usual }]) => [name, usual]),
) as Settings;

/** What whoever comes for the first time finds: the usual choices, and a question about the harp. */
export const FIRST_SETTINGS: Settings = { ...DEFAULT_SETTINGS, askHarp: true };

/** The usual mixer, style and plan by themselves, for what plays without a player's choices. */
export const { mix: DEFAULT_MIX, style: DEFAULT_STYLE, plan: DEFAULT_PLAN } = DEFAULT_SETTINGS;
