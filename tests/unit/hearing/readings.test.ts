import { describe, expect, it } from 'vitest';
import { hasDip } from '../../../src/core/hearing/readings';

describe('a dip of the level', () => {
  const at = (...levels: readonly number[]) =>
    levels.map((level, i) => ({ time: i / 100, cents: 6900, level }));

  it('is the lowest place with so many dB on both sides', () => {
    expect(hasDip(at(-20, -24, -31, -27, -21), [0, 4], 6)).toBe(true);
  });

  it('is none where one side is no higher, as at the end of a note or its beginning', () => {
    expect(hasDip(at(-20, -24, -31, -30, -29), [0, 4], 6)).toBe(false);
    expect(hasDip(at(-31, -28, -24, -20), [0, 3], 6)).toBe(false);
    expect(hasDip(at(-20, -20, -20), [0, 2], 6)).toBe(false);
  });
});
