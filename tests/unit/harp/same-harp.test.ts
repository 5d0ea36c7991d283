import { describe, expect, it } from 'vitest';
import type { OwnedHarp } from '../../../src/core/harp/harp-case';
import { differentHarps, sameHarp } from '../../../src/core/harp/same-harp';
import { findTuning, RICHTER } from '../../../src/core/harp/tunings';
import { asHz, asPitchClass } from '../../../src/core/theory/units';

const C: OwnedHarp = {
  id: 'one',
  name: '',
  tuning: RICHTER,
  key: asPitchClass(0),
  octave: 0,
  intonation: 'equal',
  reference: asHz(440),
  stretch: 0,
  valved: [],
};
const flat = RICHTER.blow.map(() => -5);
const own = { cents: { blow: flat, draw: flat } };

describe('harps in a case', () => {
  it.each([
    ['another name and id', { id: 'two', name: 'Spare' }, true, true],
    ['a tuning of another name with the same reeds', { tuning: { ...RICHTER, id: 'own' } }, true, true],
    ['another intonation', { intonation: 'just-second' }, false, true],
    ['cents of its own', { intonation: own }, false, true],
    ['another reference', { reference: asHz(442) }, false, true],
    ['an octave stretch', { stretch: 2 }, false, true],
    ['a valve', { valved: [3] }, false, false],
    ['another key', { key: asPitchClass(2) }, false, false],
    ['another octave', { octave: -1 }, false, false],
    ['other reeds', { tuning: findTuning('natural-minor') ?? RICHTER }, false, false],
  ] as const)('%s', (_, change, same, countedOnce) => {
    const other: OwnedHarp = { ...C, ...change };
    expect(sameHarp(C, other)).toBe(same);
    expect(differentHarps([C, other])).toHaveLength(countedOnce ? 1 : 2);
  });
});
