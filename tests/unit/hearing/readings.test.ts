import { describe, expect, it } from 'vitest';
import { crossing, hasDip } from '../../../src/core/hearing/readings';

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

describe('where one pitch turns into another', () => {
  const at = (...cents: readonly number[]) =>
    cents.map((each, i) => ({ time: i / 100, cents: each, level: -20 }));

  it('is the last time it is half-way, whatever was before', () => {
    expect(crossing(at(6500, 6500, 6540, 6560, 6600), [6500, 6600])).toBe(3);
    // A scoop that begins beyond half-way to the note after, and what a room kept of a higher note.
    expect(crossing(at(6530, 6590, 6600, 6600, 6545, 6500), [6600, 6500])).toBe(4);
    expect(crossing(at(7700, 7700, 6500, 6500, 6600, 6600), [6500, 6600])).toBe(4);
  });

  it('is never the first reading', () => {
    expect(crossing(at(6600, 6600), [6500, 6600])).toBe(1);
  });
});
