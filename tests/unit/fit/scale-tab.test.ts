import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ScaleRun, scaleTab } from '../../../src/core/fit/scale-tab';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { EVERY_TECHNIQUE, effortOf, isInReach, NATURAL_NOTES } from '../../../src/core/harp/reach';
import { soundId } from '../../../src/core/harp/tab';
import { RICHTER, TUNINGS } from '../../../src/core/harp/tunings';
import { keyName, PITCH_CLASSES } from '../../../src/core/theory/pitch';
import { SCALE_IDS, scaleOf } from '../../../src/core/theory/scales';
import { asPitchClass } from '../../../src/core/theory/units';

const C_HARP = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
const tabOf = (run: ScaleRun | undefined): string =>
  (run?.up ?? []).map(({ sound }) => (sound === null ? '–' : soundId(sound))).join(' ');

describe('scaleTab', () => {
  it('leaves notes out of reach in their place, empty', () => {
    const runs = scaleTab({ scale: scaleOf('minor-blues', 'G'), harp: C_HARP, technique: NATURAL_NOTES });
    expect(tabOf(runs[0])).toBe('2D – 4B – 4D 5D 6B');
    expect(runs.map(({ complete }) => complete)).toEqual([false, false]);
  });

  it('comes down as it went up', () => {
    const [run] = scaleTab({ scale: scaleOf('mixolydian', 'G'), harp: C_HARP, technique: EVERY_TECHNIQUE });
    expect(run?.down).toEqual([...(run?.up ?? [])].reverse());
  });

  it('rises tonic to tonic through the scale, on sounds in reach that are hardly harder than the easiest', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...TUNINGS),
        fc.constantFrom(...SCALE_IDS),
        fc.constantFrom(...PITCH_CLASSES),
        fc.boolean(),
        (tuning, id, key, overbends) => {
          const harp = buildHarp({ tuning, key: asPitchClass(0), octave: 0 });
          const technique = { ...EVERY_TECHNIQUE, overbends };
          const scale = scaleOf(id, keyName(key, 'major'));
          for (const { up, complete } of scaleTab({ scale, harp, technique })) {
            expect(up).toHaveLength(scale.tones.length + 1);
            expect((up.at(-1)?.pitch ?? 0) - (up[0]?.pitch ?? 0)).toBe(12);
            expect(complete).toBe(up.every(({ sound }) => sound !== null));
            for (const { tone, pitch, sound } of up) {
              expect(asPitchClass(pitch)).toBe(tone.pitchClass);
              const ways = harp.sounds.filter((each) => each.pitch === pitch && isInReach(each, technique));
              if (sound === null) expect(ways).toEqual([]);
              else {
                expect(ways).toContainEqual(sound);
                const least = Math.min(...ways.map((each) => effortOf(each, harp)));
                expect(effortOf(sound, harp) - least).toBeLessThan(2);
              }
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
