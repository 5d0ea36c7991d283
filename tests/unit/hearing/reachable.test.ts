import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { soundHz } from '../../../src/core/harp/intonation';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { reachableRanges } from '../../../src/core/hearing/reachable';
import { asHz, asPitchClass } from '../../../src/core/theory/units';

const anyHarp = fc
  .record({
    tuning: fc.constantFrom(...TUNINGS),
    key: fc.integer({ min: 0, max: 11 }),
    octave: fc.integer({ min: -1, max: 1 }),
  })
  .map(({ tuning, key, octave }) => buildHarp({ tuning, key: asPitchClass(key), octave }));

describe('what a harp can sound', () => {
  it('holds every sound of it, half a semitone around', () => {
    fc.assert(
      fc.property(anyHarp, fc.integer({ min: 440, max: 446 }), (harp, reference) => {
        const ranges = reachableRanges(harp, asHz(reference));
        for (const sound of harp.sounds) {
          const hz = soundHz(sound, asHz(reference));
          expect(
            ranges.some(({ from, to }) => from <= hz * 2 ** (-50 / 1200) && hz * 2 ** (49 / 1200) <= to),
          ).toBe(true);
        }
      }),
    );
  });

  it('is in order, without overlaps, and ends near the outermost sounds', () => {
    fc.assert(
      fc.property(anyHarp, (harp) => {
        const ranges = reachableRanges(harp);
        for (const [i, { from, to }] of ranges.entries()) {
          expect(to).toBeGreaterThan(from);
          if (i > 0) expect(from).toBeGreaterThan(ranges[i - 1]?.to ?? 0);
        }
        const pitches = harp.sounds.map((sound) => soundHz(sound));
        expect(ranges[0]?.from).toBeGreaterThan(Math.min(...pitches) * 2 ** (-2 / 12));
        expect(ranges.at(-1)?.to).toBeLessThan(Math.max(...pitches) * 2 ** (2 / 12));
      }),
    );
  });

  it('leaves what lies between out: a semitone below the lowest reed of a C harp is no sound of it', () => {
    const harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 });
    expect(reachableRanges(harp)[0]?.from).toBeGreaterThanOrEqual(261.62 * 2 ** (-1 / 12));
  });
});
