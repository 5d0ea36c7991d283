import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import {
  expectedCents,
  INTONATION_IDS,
  INTONATIONS,
  intonate,
  isIntonationId,
  soundHz,
  temperamentOf,
} from '../../../src/core/harp/intonation';
import { findTuning, RICHTER } from '../../../src/core/harp/tunings';
import { hzOf } from '../../../src/core/theory/temperament';
import { asHz, asPitchClass } from '../../../src/core/theory/units';

describe('intonate', () => {
  it('names the steps a table does not cover and leaves those reeds equal', () => {
    const minor = findTuning('natural-minor') ?? RICHTER;
    const { cents, uncovered } = intonate(minor, 'just-first');
    expect(uncovered).toEqual([3, 10]);
    expect([cents.blow[1], cents.draw[2], cents.blow[2]]).toEqual([0, 0, 2]);
    expect(intonate(minor, 'equal').uncovered).toEqual([]);
  });

  it('follows the step, not the hole', () => {
    const solo = findTuning('solo') ?? RICHTER;
    expect(intonate(solo, 'compromise')).toEqual({
      cents: { blow: [0, -14, 2, 0, 0, -14, 2, 0, 0, -14], draw: [4, -2, 6, -12, 4, -2, 6, -12, 4, -2] },
      uncovered: [],
    });
  });

  it('lists its ids with words and sources', () => {
    expect(INTONATION_IDS[0]).toBe('equal');
    for (const id of INTONATION_IDS) {
      expect(isIntonationId(id)).toBe(true);
      expect(INTONATIONS[id].description).toMatch(/\.$/);
      expect(INTONATIONS[id].source).not.toBe('');
    }
    expect(isIntonationId('toString')).toBe(false);
  });
});

describe('expected pitch', () => {
  const cents = intonate(RICHTER, 'just-second').cents;
  const harp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0, cents });

  it('is the sound’s own cents at the standard reference, and the frequency to match', () => {
    for (const sound of harp.sounds) {
      expect(expectedCents(sound)).toBeCloseTo(sound.cents, 9);
      expect(soundHz(sound, asHz(442)) / soundHz(sound)).toBeCloseTo(442 / 440, 9);
    }
  });

  it('gives the band the temperament of the harp', () => {
    const temperament = temperamentOf(harp, asHz(442));
    expect(temperament.cents).toEqual([0, 0, 4, 0, -14, -29, 0, 2, 0, 6, 0, -12]);
    const thirds = harp.sounds.filter(({ technique }) => technique === 'natural');
    for (const sound of thirds) {
      expect(hzOf(sound.pitch, temperament)).toBeCloseTo(soundHz(sound, asHz(442)), 6);
    }
  });

  it('refuses a reference outside the range', () => {
    const [sound] = harp.sounds;
    expect(() => sound && soundHz(sound, asHz(460))).toThrow('440 to 446 Hz, got 460');
  });
});
