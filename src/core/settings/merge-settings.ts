import { type Fields, isRecord } from '../theory/is-record';
import { parseSettings } from './parse-settings';
import type { Settings } from './settings';

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Records that are one of several kinds make sense whole only. */
const isOtherKind = (a: Fields, b: Fields): boolean => a.kind !== b.kind;

/** What changed between two values, laid on a third, field by field. */
const merge = (from: unknown, to: unknown, onto: unknown): unknown => {
  if (isSame(from, to)) return onto;
  if (!(isRecord(from) && isRecord(to) && isRecord(onto)) || isOtherKind(from, to) || isOtherKind(to, onto))
    return to;
  const keys = [...new Set([...Object.keys(onto), ...Object.keys(to)])];
  return Object.fromEntries(
    keys
      .map((key) => [key, merge(from[key], to[key], onto[key])] as const)
      .filter(([, value]) => value !== undefined),
  );
};

const HARP = ['tuning', 'intonation', 'valved'] as const;

const reedsOf = ({ tuning }: Settings): unknown => [tuning.blow, tuning.draw];

/** Cents and valves belong to reeds: they are not laid on a harp with other ones. */
const mergeHarp = (from: Settings, to: Settings, onto: Settings): Pick<Settings, (typeof HARP)[number]> => {
  const changed = HARP.filter((field) => !isSame(from[field], to[field]));
  const whole = changed.length > 0 && !isSame(reedsOf(to), reedsOf(onto));
  const of = (field: (typeof HARP)[number]): Settings => (whole || changed.includes(field) ? to : onto);
  return {
    tuning: of('tuning').tuning,
    intonation: of('intonation').intonation,
    valved: of('valved').valved,
  };
};

/**
 * What one tab changed, laid on what another one has kept meanwhile: the field changed last wins, all others stay.
 * @param from the settings before the changes, @param to after them, @param onto what is kept now.
 */
export const mergeSettings = (from: Settings, to: Settings, onto: Settings): Settings =>
  parseSettings({ ...Object(merge(from, to, onto)), ...mergeHarp(from, to, onto) }).settings;
