import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import {
  markTuning,
  parseTuning,
  REED_RANGE,
  withHoles,
  withReed,
} from '../../../src/core/harp/custom-tuning';
import { RICHTER, TUNINGS } from '../../../src/core/harp/tunings';
import { asPitchClass } from '../../../src/core/theory/units';

const OWN = { id: 'own', name: 'Own', blow: RICHTER.blow, draw: RICHTER.draw };
const tenReeds = (reed: unknown): readonly unknown[] => Array.from({ length: 10 }, () => reed);

describe('parseTuning', () => {
  it('keeps a good one as it is', () => {
    expect(parseTuning(JSON.parse(JSON.stringify(OWN)))).toEqual({ tuning: OWN, problems: [] });
  });

  it.each([
    [null, ['The tuning could not be read at all; the standard layout stands in its place.']],
    [{ ...OWN, name: '' }, ['The tuning had no name; it is called "My tuning" now.']],
    [
      { ...OWN, draw: 'D G B' },
      ['The draw reeds could not be read; the standard ones stand in their place.'],
    ],
    [
      { ...OWN, blow: [...RICHTER.blow.slice(0, 8), 'x', 99] },
      ['No usable blow reed in holes 9, 10; the standard ones stand there. Check it by ear.'],
    ],
    [
      { ...OWN, draw: RICHTER.draw.slice(0, 9) },
      ['No usable draw reed in hole 10; the standard one stands there. Check it by ear.'],
    ],
    [
      { ...OWN, blow: [...RICHTER.blow, 40, 43, 48, 52, 55], draw: [...RICHTER.draw, 38, 41, 45, 50] },
      ['The blow reeds above hole 14 were left out.'],
    ],
  ])('repairs %j', (value, problems) => {
    const parsed = parseTuning(value);
    expect(parsed.problems).toEqual(problems);
    expect(parsed.tuning.blow.slice(0, 8)).toEqual(RICHTER.blow.slice(0, 8));
  });

  it('never throws, and what it gives can be built and read again without complaint', () => {
    const row = fc.oneof(fc.anything(), fc.array(fc.oneof(fc.integer({ min: -30, max: 70 }), fc.anything())));
    const value = fc.oneof(
      fc.anything(),
      fc.record({ id: fc.anything(), name: fc.anything(), blow: row, draw: row }),
    );
    fc.assert(
      fc.property(value, (given) => {
        const { tuning } = parseTuning(given);
        expect(buildHarp({ tuning, key: asPitchClass(0), octave: 0 }).reeds).toHaveLength(
          2 * tuning.blow.length,
        );
        expect(parseTuning(tuning)).toEqual({ tuning, problems: [] });
      }),
      { numRuns: 500 },
    );
  });
});

describe('markTuning', () => {
  it('finds nothing odd in the tunings of the table, apart from what they are', () => {
    expect(
      TUNINGS.flatMap((tuning) => markTuning(tuning).map(({ sentence }) => `${tuning.id}: ${sentence}`)),
    ).toEqual([]);
  });

  it.each([
    [
      'equal reeds',
      withReed(OWN, 'draw', 3, 7),
      'Hole 3 has the same note on blow and draw, so it has no bend and no overbend.',
    ],
    [
      'wide hole',
      withReed(OWN, 'draw', 10, 29),
      'The reeds of hole 10 are 7 semitones apart; bends that deep are not to be expected.',
    ],
    ['falling row', withReed(OWN, 'blow', 2, -1), 'Blow 2 is lower than blow 1.'],
    ['wide step', withReed(OWN, 'draw', 10, 40), 'Draw 10 is 11 semitones above draw 9.'],
    ['extreme pitch', withReed(OWN, 'blow', 1, -20), 'Blow 1 lies far outside the range of such harps.'],
  ] as const)('marks %s', (kind, tuning, sentence) => {
    expect(markTuning(tuning)).toContainEqual(expect.objectContaining({ kind, sentence }));
  });

  it('is total', () => {
    const rows = fc.array(fc.integer({ min: REED_RANGE.low, max: REED_RANGE.high }), {
      minLength: 10,
      maxLength: 10,
    });
    fc.assert(
      fc.property(rows, rows, (blow, draw) => {
        for (const { hole, sentence } of markTuning({ ...OWN, blow, draw })) {
          expect(hole >= 1 && hole <= 10).toBe(true);
          expect(sentence).toMatch(/^[A-Z].*\.$/);
        }
      }),
    );
  });
});

describe('editing', () => {
  it('changes one reed and leaves the rest', () => {
    expect(withReed(OWN, 'draw', 5, 18).draw).toEqual([2, 7, 11, 14, 18, 21, 23, 26, 29, 33]);
    expect(() => withReed(OWN, 'draw', 11, 18)).toThrow('A hole is 1 to 10, got 11');
    expect(() => withReed(OWN, 'draw', 1, 61)).toThrow('-24 to 60 semitones, got 61');
  });

  it('goes on above hole 10 as the layout does, and comes back', () => {
    const wide = withHoles(OWN, 14);
    expect(wide.blow.slice(10)).toEqual([40, 43, 48, 52]);
    expect(wide.draw.slice(10)).toEqual([38, 41, 45, 50]);
    expect(withHoles(wide, 10)).toEqual(OWN);
    expect(markTuning(withHoles(OWN, 13))).toEqual([]);
    expect(() => withHoles(OWN, 9)).toThrow('10 to 14 holes, got 9');
  });

  it('lets nonsense be built', () => {
    const harp = buildHarp({
      tuning: { ...OWN, blow: tenReeds(5).map(Number), draw: tenReeds(5).map(Number) },
      key: asPitchClass(0),
      octave: 0,
    });
    expect(harp.sounds).toHaveLength(20);
  });
});
