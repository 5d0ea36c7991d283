import * as v from 'valibot';
import { isRecord } from '../theory/is-record';
import { DEFAULT_SETTINGS } from './defaults';
import { SETTINGS, type Settings } from './settings';

/** The version written with every save; a larger one comes from a newer program. */
const SETTINGS_VERSION = 1;

/** What could be read of stored choices; the rest is as usual. */
export interface ParsedSettings {
  readonly settings: Settings;
  /** What could not be read, in sentences for the player; empty when all was well. */
  readonly problems: readonly string[];
}

/**
 * Reads stored or linked settings. Total: never throws, keeps every field that can be read, takes the
 * default for the others and says which.
 *
 * @example
 * parseSettings({ version: 1, tempo: 96 }).settings.tempo // 96
 * parseSettings({ version: 1, tempo: 'fast' }).settings.tempo // DEFAULT_SETTINGS.tempo
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
    else problems.push(`The kept ${noun} could not be read; what is usual is taken instead.`);
  }
  const { settings, misfits } = fitToReeds(orderRange({ ...DEFAULT_SETTINGS, ...read }));
  return { settings, problems: [...problems, ...misfits] };
};

/** Cents and valves belong to reeds: those of a harp with another number of holes go, and are named. */
const fitToReeds = (settings: Settings): { settings: Settings; misfits: readonly string[] } => {
  const { intonation, valved, tuning } = settings;
  const holes = tuning.blow.length;
  const fits =
    typeof intonation === 'string' ||
    (intonation.cents.blow.length === holes && intonation.cents.draw.length === holes);
  const fitting = valved.filter((hole) => hole <= holes);
  return {
    settings: {
      ...settings,
      intonation: fits ? intonation : DEFAULT_SETTINGS.intonation,
      valved: fitting.length === valved.length ? valved : fitting,
    },
    misfits: [
      ...(fits
        ? []
        : [
            `The kept cents are not for the ${holes} holes of this harp; its reeds are taken as equal instead.`,
          ]),
      ...(fitting.length === valved.length
        ? []
        : [`The kept valves above hole ${holes} were left out; this harp has no such holes.`]),
    ],
  };
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
