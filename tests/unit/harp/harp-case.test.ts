import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildOwnedHarp, CASE_SIZE, type OwnedHarp, parseHarpCase } from '../../../src/core/harp/harp-case';
import { soundId } from '../../../src/core/harp/tab';
import { RICHTER } from '../../../src/core/harp/tunings';
import { asHz, asPitchClass } from '../../../src/core/theory/units';

const TUNING = { id: 'richter', name: 'Standard (Richter)', blow: RICHTER.blow, draw: RICHTER.draw };
const OWNED: OwnedHarp = {
  id: 'a',
  name: 'The one with the dent',
  tuning: TUNING,
  key: asPitchClass(9),
  octave: 0,
  intonation: 'compromise',
  reference: asHz(442),
  stretch: 0,
  valved: [],
};
const FLAT = Array.from({ length: 10 }, (_, i) => i);

describe('buildOwnedHarp', () => {
  it('takes the published intonation or the player’s own cents', () => {
    const draws = (harp: OwnedHarp): readonly number[] =>
      buildOwnedHarp(harp)
        .reeds.filter(({ breath }) => breath === 'draw')
        .map(({ cents }) => cents);
    expect(draws(OWNED)).toEqual([4, 2, -12, 4, -2, 6, -12, 4, -2, 6]);
    const stretched = buildOwnedHarp({ ...OWNED, intonation: 'equal', stretch: 2 }).reeds.map(
      ({ cents }) => cents,
    );
    expect([stretched[0], stretched[3], stretched[9]]).toEqual([-2, 0, 4]);
    expect(draws({ ...OWNED, intonation: { cents: { blow: FLAT, draw: FLAT } } })).toEqual(FLAT);
  });

  it('adds the bends of valved holes', () => {
    const ids = buildOwnedHarp({ ...OWNED, valved: [5] }).sounds.map(soundId);
    expect(ids).toContain("5B'");
    expect(ids).not.toContain('5OB');
    expect(ids).toContain('6OB');
  });
});

describe('parseHarpCase', () => {
  it('keeps a good case as it is', () => {
    const harps = [
      OWNED,
      { ...OWNED, id: 'b', stretch: 2, intonation: { cents: { blow: FLAT, draw: FLAT } }, valved: [1, 5] },
    ];
    expect(parseHarpCase(JSON.parse(JSON.stringify(harps)))).toEqual({ harps, problems: [] });
  });

  it.each([
    ['nothing', 'The harp case could not be read; it starts empty.'],
    [[{ ...OWNED, key: 12 }], 'Harp 1 of the case has no readable key and was left out; add it again.'],
    [[{ ...OWNED, octave: 7 }], 'Harp 1 of the case: its octave could not be read; taken as the usual one.'],
    [
      [{ ...OWNED, intonation: 'best' }],
      'Harp 1 of the case: its reed cents could not be read; taken as equal temperament.',
    ],
    [
      [{ ...OWNED, reference: 400 }],
      'Harp 1 of the case: its reference pitch could not be read; taken as 440 Hz.',
    ],
    [[{ ...OWNED, valved: [11] }], 'Harp 1 of the case: its valves could not be read; taken as none.'],
    [
      [{ ...OWNED, tuning: { ...TUNING, draw: null } }],
      'Harp 1 of the case: The draw reeds could not be read; the standard ones stand in their place.',
    ],
  ])('says what is wrong with %j', (value, problem) => {
    expect(parseHarpCase(value).problems).toEqual([problem]);
  });

  it('keeps harps of one id apart, and a bounded number', () => {
    expect(parseHarpCase([OWNED, OWNED, OWNED]).harps.map(({ id }) => id)).toEqual(['a', 'a-2', 'a-3']);
    const many = parseHarpCase(Array.from({ length: CASE_SIZE + 1 }, (_, i) => ({ ...OWNED, id: `${i}` })));
    expect(many.harps).toHaveLength(CASE_SIZE);
    expect(many.problems).toEqual([`Only the first ${CASE_SIZE} harps of the case were kept.`]);
  });

  it('never throws, and what it gives can be built and read again without complaint', () => {
    const field = (good: unknown): fc.Arbitrary<unknown> => fc.oneof(fc.constant(good), fc.anything());
    const harp = fc.record({
      id: field('x'),
      name: field('y'),
      tuning: field(TUNING),
      key: field(3),
      octave: field(-1),
      intonation: field('equal'),
      reference: field(441),
      valved: field([2]),
    });
    fc.assert(
      fc.property(fc.oneof(fc.anything(), fc.array(fc.oneof(harp, fc.anything()))), (value) => {
        const { harps } = parseHarpCase(value);
        for (const each of harps) expect(buildOwnedHarp(each).reeds.length).toBeGreaterThanOrEqual(20);
        expect(parseHarpCase(JSON.parse(JSON.stringify(harps)))).toEqual({ harps, problems: [] });
      }),
      { numRuns: 300 },
    );
  });
});
