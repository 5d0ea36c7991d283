import * as v from 'valibot';
import { readDecimal } from '../theory/decimal';
import { asBpm, type Bpm } from '../theory/units';
import { quoted } from '../theory/wording';
import { between } from './setting';

/** Tempo limits the player may choose, in beats a minute. */
export const TEMPO_RANGE = { low: 40, high: 280 } as const;

/** Reads a kept tempo. */
export const tempoSchema = v.pipe(between(TEMPO_RANGE.low, TEMPO_RANGE.high), v.transform(asBpm));

/**
 * Reads a tempo as a player types it.
 * @returns the tempo in beats a minute, or a sentence that says what was wrong.
 *
 * @example
 * parseTempo('104,5') // 104.5
 */
export const parseTempo = (typed: string): Bpm | string => {
  const { low, high } = TEMPO_RANGE;
  const value = readDecimal(typed);
  if (value === null) {
    return `${quoted(typed)} is not a number. Type a tempo from ${low} to ${high} beats a minute.`;
  }
  if (value < low || value > high)
    return `${quoted(typed)} is out of reach. Type a tempo from ${low} to ${high} beats a minute.`;
  return asBpm(value);
};
