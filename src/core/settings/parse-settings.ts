import * as v from 'valibot';
import { DEFAULT_SETTINGS } from './defaults';
import { SETTINGS, type Settings } from './settings';

/** The version written with every save; a larger one comes from a newer program. */
export const SETTINGS_VERSION = 1;

export interface ParsedSettings {
  readonly settings: Settings;
  /** What could not be read, in sentences for the player; empty when all was well. */
  readonly problems: readonly string[];
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * Reads stored or linked settings. Total: never throws, keeps every field that can be read, takes the
 * default for the others and says which.
 * @example parseSettings({ version: 1, tempo: 96 }).settings.tempo // 96, everything else as usual
 */
export const parseSettings = (input: unknown): ParsedSettings => {
  if (!isRecord(input)) {
    return {
      settings: DEFAULT_SETTINGS,
      problems: ['The kept settings are not settings of this program; the usual ones are used instead.'],
    };
  }
  const problems: string[] = [];
  const version = input.version;
  if (typeof version === 'number' && version > SETTINGS_VERSION) {
    problems.push(
      'The kept settings come from a newer version of this program; what is known here was read, the rest was left out.',
    );
  }
  const read: Record<string, unknown> = {};
  for (const [name, { noun, schema }] of Object.entries(SETTINGS)) {
    if (!(name in input)) continue;
    const result = v.safeParse(schema, input[name]);
    if (result.success) read[name] = result.output;
    else problems.push(`The kept ${noun} could not be read; the usual ${noun} is used instead.`);
  }
  return { settings: orderRange({ ...DEFAULT_SETTINGS, ...read }), problems };
};

const orderRange = (settings: Settings): Settings => {
  const { repeat } = settings.plan;
  if (repeat === null || repeat.from <= repeat.to) return settings;
  return { ...settings, plan: { ...settings.plan, repeat: { from: repeat.to, to: repeat.from } } };
};

/** The JSON-safe record that `parseSettings` reads back. */
export const storableSettings = (settings: Settings): Record<string, unknown> => ({
  version: SETTINGS_VERSION,
  ...settings,
});
