import * as v from 'valibot';
import { asPitchClass } from '../theory/units';

/** One thing the player can choose and that is kept: everything else about it is derived from here. */
export interface Setting<Value> {
  /** What a message to the player calls it. */
  readonly noun: string;
  /** What a stranger finds. */
  readonly usual: Value;
  /** Reads it from what was stored; what it refuses is replaced by the usual value and said. */
  readonly schema: v.GenericSchema<unknown, Value>;
}

/**
 * Declares a setting: what it is called, what is usual, how it is read.
 *
 * @example
 * const loudness = setting('loudness of the click', 0.5, between(0, 1));
 * v.safeParse(loudness.schema, 2).success // false
 */
export const setting = <Value>(
  noun: string,
  usual: Value,
  schema: v.GenericSchema<unknown, Value>,
): Setting<Value> => ({ noun, usual, schema });

/** A finite number from `low` to `high`, both included. */
export const between = (low: number, high: number) =>
  v.pipe(v.number(), v.finite(), v.minValue(low), v.maxValue(high));

/** A whole number from `low` to `high`, both included. */
export const whole = (low: number, high: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(low), v.maxValue(high));

/** A pitch class, 0 (C) to 11 (B). */
export const pitchClass = v.pipe(whole(0, 11), v.transform(asPitchClass));

/** A seed as `newSeed` makes them. */
export const seed = whole(0, 2 ** 31);

/** A name or an id: text of at most 100 characters. */
export const shortText = v.pipe(v.string(), v.maxLength(100));
