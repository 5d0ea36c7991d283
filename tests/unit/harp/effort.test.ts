import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { effortOf } from '../../../src/core/harp/reach';
import { soundId } from '../../../src/core/harp/tab';
import { RICHTER } from '../../../src/core/harp/tunings';
import { asPitchClass } from '../../../src/core/theory/units';

const HARP = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

const effort = (id: string): number => {
  const sound = HARP.sounds.find((each) => soundId(each) === id);
  if (sound === undefined) throw new Error(`The harp has no ${id}`);
  return effortOf(sound, HARP);
};

describe('the effort of a sound', () => {
  // The order in which teachers introduce techniques: common practice, no source.
  it.each([
    [
      ['4B', "4D'", "8B'", '6OB', '7OD'],
      'from natural notes by draw and blow bends to overblows and overdraws',
    ],
    [["4D'", "2D''", "3D'''"], 'the deeper a bend that goes to the floor of its hole'],
    [["1D'", "2D'"], 'a bend that stops above the floor more than one that leans on it'],
    [["2D''", "3D''"], 'at the same depth too'],
    [["9B'", "10B'"], 'blow bends alike'],
  ])('%j grows: %s', (ids) => {
    const efforts = ids.map(effort);
    for (const [i, each] of efforts.slice(1).entries()) expect(each).toBeGreaterThan(efforts[i] ?? Infinity);
  });
});
