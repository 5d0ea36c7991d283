import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseKnownReeds } from '../../../src/core/grips/known-reeds';
import { joinLearnt, learntId, parseLearntHarp } from '../../../src/core/grips/learnt-harp';
import { createReedProfiles } from '../../../src/core/grips/reed-profiles';
import { C_HARP } from '../../helpers/heard-note';
import { soakRuns } from '../../helpers/soak';

const heardPartials = [0, 1, 2].map((harmonic) => ({ reed: 4, harmonic, level: -3 * harmonic, off: 2 }));
const learnt = () => {
  const profiles = createReedProfiles(C_HARP);
  for (let window = 0; window < 80; window += 1) profiles.learn(heardPartials);
  return profiles;
};

describe('what is known of reeds', () => {
  it('makes the same reeds when it is read again, to a tenth of a dB', () => {
    const profiles = learnt();
    const { known, problems } = parseKnownReeds(JSON.parse(JSON.stringify(profiles.known())));
    expect(problems).toEqual([]);
    expect(known?.reeds).toHaveLength(1);
    // A reed's memory holds sixty windows.
    expect(known?.reeds[0]?.windows.slice(0, 4)).toEqual([60, 60, 60, 0]);
    const again = createReedProfiles(C_HARP, undefined, known);
    profiles.reeds.forEach(({ levels, weights }, r) => {
      again.reeds[r]?.levels.forEach((level, i) => {
        expect(Math.abs(level - (levels[i] ?? 99))).toBeLessThan(0.2);
      });
      expect(again.reeds[r]?.weights).toEqual(weights);
    });
    expect(again.known()).toEqual(known);
  });

  it('is small', () => {
    const profiles = createReedProfiles(C_HARP);
    const partials = profiles.reeds
      .slice(0, -1)
      .flatMap(({ count }, reed) =>
        Array.from({ length: count }, (_, harmonic) => ({ reed, harmonic, level: -12.345, off: 1.234 })),
      );
    profiles.learn(partials);
    expect(profiles.known().reeds).toHaveLength(20);
    expect(JSON.stringify(profiles.known()).length).toBeLessThan(4000);
  });

  it('is read from anything without an error, and what was read reads back the same', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.jsonValue(),
          fc.jsonValue().map((reeds) => ({ common: [], colour: [], reeds })),
        ),
        (value) => {
          const { known } = parseKnownReeds(value);
          if (known !== null) expect(parseKnownReeds(known).known).toEqual(known);
          createReedProfiles(C_HARP, undefined, known);
          const { item, problems } = parseLearntHarp({ microphone: 'm', name: 'n', known: value });
          expect(item !== null || problems.length > 0).toBe(true);
        },
      ),
      { numRuns: soakRuns(30) },
    );
  });

  it('loses reeds that cannot be read, with a word, and takes no value for a level that none can be', () => {
    const reeds = [
      { id: '1B', levels: [0, -5], windows: [3, 3] },
      { id: '2B', levels: [0, 'loud'], windows: [3, 3] },
      { id: '3B', levels: [0, -5], windows: [3] },
      { id: '4B', levels: [0, 5000], windows: [3, 3] },
    ];
    const { known, problems } = parseKnownReeds({ common: [], colour: [], reeds });
    expect(known?.reeds.map(({ id }) => id)).toEqual(['1B']);
    expect(problems).toEqual([
      'What was learnt of some reeds of a harp could not be read; they are learnt anew.',
    ]);
    expect(parseKnownReeds({ common: [Number.NaN], colour: [], reeds: [] }).known).toBeNull();
  });

  it('has one place for harp and microphone, which says itself where it is', () => {
    const known = learnt().known();
    const { item } = parseLearntHarp({ id: 'elsewhere', microphone: 'lapel', name: '0 0', known });
    expect(item?.id).toBe(learntId('lapel', '0 0'));
    expect(parseLearntHarp({ microphone: 'lapel', known }).item).toBeNull();
    const more = { id: 'x', name: '0 0', microphone: 'lapel', known };
    const less = { ...more, known: { ...known, reeds: [] } };
    expect([joinLearnt(more, less), joinLearnt(less, more)]).toEqual([more, more]);
  });
});
