import type { Harp, Sound } from '../harp/harp';
import { soundHz } from '../harp/intonation';
import { STANDARD_PITCH } from '../theory/temperament';
import { asHz, type Hz } from '../theory/units';

/** A stretch of pitch that can sound, both ends included. */
export interface PitchRange {
  readonly from: Hz;
  readonly to: Hz;
}

/**
 * Cents beyond the nominal pitch that still belong to a sound: breath lowers a reed and a scoop starts below it; a
 * bend overshoots its floor; an overbend is pushed up by its player (sizes: common practice, no source).
 */
const BEYOND = {
  natural: { below: 100, above: 50 },
  bend: { below: 70, above: 100 },
  overbend: { below: 100, above: 150 },
} as const;

/** Any ten-hole harp there is: G3 of the lowest usual key to the last overdraw of a high one, with a margin. */
export const ANY_HARP: readonly PitchRange[] = [{ from: asHz(170), to: asHz(3600) }];

const rangeOf = (sound: Sound, reference: Hz): PitchRange => {
  const hz = soundHz(sound, reference);
  const { below, above } = BEYOND[sound.technique];
  return { from: asHz(hz * 2 ** (-below / 1200)), to: asHz(hz * 2 ** (above / 1200)) };
};

/** Joins ranges that touch or overlap, lowest first. */
const joined = (ranges: readonly PitchRange[]): readonly PitchRange[] => {
  const result: PitchRange[] = [];
  for (const range of ranges.toSorted((a, b) => a.from - b.from)) {
    const last = result.at(-1);
    if (last !== undefined && range.from <= last.to) {
      result[result.length - 1] = { from: last.from, to: asHz(Math.max(last.to, range.to)) };
    } else {
      result.push(range);
    }
  }
  return result;
};

/**
 * The stretches of pitch a harp can sound: its reeds, bends, overbends and the glides between, lowest first and
 * apart from each other. Throws RangeError on a reference outside 440–446 Hz.
 */
export const reachableRanges = (harp: Harp, reference: Hz = STANDARD_PITCH): readonly PitchRange[] =>
  joined(harp.sounds.map((sound) => rangeOf(sound, reference)));
