import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  harpKeyFor,
  POSITIONS,
  positionAt,
  positionOf,
  positionTitle,
  songKey,
} from '../../../src/core/harp/positions';
import { PITCH_CLASSES } from '../../../src/core/theory/pitch';

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
  });
});
