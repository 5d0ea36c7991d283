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

describe('just intonation for minor reeds', () => {
  const minor = findTuning('natural-minor') ?? RICHTER;
  const { cents, uncovered } = intonate(minor, 'just-minor');
  const harp = buildHarp({ tuning: minor, key: asPitchClass(0), octave: 0, cents });
  const pitchOf = (breath: 'blow' | 'draw', hole: number): number => {
    const reed = harp.reeds.find((each) => each.breath === breath && each.hole === hole);
    return 100 * (reed?.pitch ?? 0) + (reed?.cents ?? 0);
  };

  // A beatless minor triad is 10:12:15 (6/5 and 3/2 above its root), with its seventh 10:12:15:18 (9/5).
  it.each([
    ['blow', [1, 2, 3]],
    ['blow', [7, 8, 9]],
    ['draw', [2, 3, 4, 5]],
    ['draw', [4, 5, 6]],
    ['draw', [8, 9, 10]],
  ] as const)('makes the chord of %s %j beatless, to the whole cent', (breath, holes) => {
    const ratios = [1, 6 / 5, 3 / 2, 9 / 5];
    const root = pitchOf(breath, holes[0]);
    holes.forEach((hole, i) => {
      expect(Math.abs(pitchOf(breath, hole) - root - 1200 * Math.log2(ratios[i] ?? 1))).toBeLessThan(1.1);
    });
  });

  it('covers every reed', () => {
    expect(uncovered).toEqual([]);
  });
});

describe('octave stretch', () => {
  const plain = buildHarp({ tuning: RICHTER, key: asPitchClass(7), octave: 0 });
  const stretched = buildHarp({ tuning: RICHTER, key: asPitchClass(7), octave: 0, stretch: 2 });
  const of = (hole: number): number =>
    stretched.reeds.find((each) => each.breath === 'blow' && each.hole === hole)?.cents ?? Number.NaN;

  it('spreads the octaves by so many cents each, around blow 4', () => {
    expect([of(1), of(4), of(7), of(10)]).toEqual([-2, 0, 2, 4]);
  });

  it('is part of what is expected of every natural note, in cents and in hertz', () => {
    const low = stretched.sounds.find(({ hole, technique }) => hole === 1 && technique === 'natural');
    if (low === undefined) throw new Error('no hole 1');
    expect(expectedCents(low)).toBeCloseTo(-2, 9);
    expect(1200 * Math.log2(soundHz(low) / hzOf(low.pitch))).toBeCloseTo(-2, 9);
    expect(plain.sounds.every((sound) => expectedCents(sound) === 0)).toBe(true);
  });

  it('adds to the cents of the reeds and moves the temperament the band takes', () => {
    const cents = intonate(RICHTER, 'just-second').cents;
    const both = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0, cents, stretch: 3 });
    expect(both.reeds.find(({ hole, breath }) => hole === 8 && breath === 'blow')?.cents).toBeCloseTo(
      -14 + 4,
      9,
    );
    expect(temperamentOf(both).cents?.[0]).toBeCloseTo((-3 + 0 + 3 + 6) / 4, 9);
  });
});
