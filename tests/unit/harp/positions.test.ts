import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  harpKeyFor,
  POSITIONS,
  positionAt,
  positionOf,
  positionSentence,
  positionTitle,
  songKey,
} from '../../../src/core/harp/positions';
import { PITCH_CLASSES } from '../../../src/core/theory/pitch';
import { asPitchClass } from '../../../src/core/theory/units';

describe('positions', () => {
  it('join harp key, position and song key both ways', () => {
    const key = fc.constantFrom(...PITCH_CLASSES);
    fc.assert(
      fc.property(key, fc.integer({ min: 1, max: 12 }), (harp, position) => {
        const song = songKey(harp, position);
        expect(harpKeyFor(song, position)).toBe(harp);
        expect(positionOf(harp, song)).toBe(position);
      }),
    );
  });

  it.each([0, 13, 1.5, Number.NaN])('refuses position %d', (position) => {
    expect(() => positionAt(position)).toThrow(`whole number from 1 to 12, got ${position}`);
  });

  it('says them in words', () => {
    expect(POSITIONS.slice(0, 5).map(({ number }) => positionTitle(number))).toEqual([
      '1st position (straight)',
      '2nd position (cross)',
      '3rd position (slant)',
      '4th position',
      '5th position',
    ]);
    const harpKey = asPitchClass(0);
    expect(positionSentence({ harpKey, position: 2, mode: 'major' })).toBe(
      'Song in G, C harp, 2nd position (cross)',
    );
    expect(positionSentence({ harpKey, position: 3, mode: 'minor' })).toBe(
      'Song in D minor, C harp, 3rd position (slant)',
    );
    expect(positionSentence({ harpKey, position: 7, mode: 'major', tonic: 'Gb' })).toBe(
      'Song in Gb, C harp, 7th position',
    );
  });
});
