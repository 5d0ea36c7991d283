import { describe, expect, it } from 'vitest';
import { lagOf, latenessOf, noiseOf, parseCalibration } from '../../../src/core/hearing/calibration';
import { asSeconds } from '../../../src/core/theory/units';

const known = {
  id: 'lapel',
  name: 'Lapel',
  noise: -58,
  roundTrip: asSeconds(0.08),
  leak: -20,
  lag: asSeconds(0.1),
  tapped: false,
  gate: -52,
};

describe('a calibration', () => {
  it('takes the level that all but one moment in twenty keep below', () => {
    const quiet = Array.from({ length: 95 }, (_, i) => -80 + i * 0.1);
    expect(noiseOf([...quiet, -20, -20, -20, -20, -20])).toBeCloseTo(-70.6, 5);
    expect(noiseOf([])).toBeNull();
  });

  it('kept before there were gates has the one of its room', () => {
    const { gate: _, ...older } = known;
    expect(parseCalibration(older).item?.gate).toBe(-54);
    expect(parseCalibration({ ...older, noise: null }).item?.gate).toBeNull();
  });

  it('finds how late the player is by the median of the notes nearest to the clicks', () => {
    const clicks = [1, 1.667, 2.333, 3, 3.667];
    expect(lagOf(clicks, [1.11, 1.777, 2.1, 2.443, 3.11, 3.777])).toBeCloseTo(0.11, 5);
    expect(lagOf(clicks, [0.95, 1.617, 2.283, 2.95])).toBeCloseTo(-0.05, 5);
    expect(lagOf(clicks, [1.1, 1.7])).toBeNull();
  });

  it('goes by the player where that is known, then by the chirps, then by a guess', () => {
    expect(latenessOf(known, 0.04)).toBe(0.1);
    expect(latenessOf({ ...known, lag: null }, 0.04)).toBe(0.08);
    expect(latenessOf({ ...known, lag: null, roundTrip: null }, 0.04)).toBe(0.04);
    expect(latenessOf(null, 0.04)).toBe(0.04);
  });

  it('reads back what it stored, forgets figures that cannot be, and says so', () => {
    expect(parseCalibration(JSON.parse(JSON.stringify(known)))).toEqual({ item: known, problems: [] });
    const { item, problems } = parseCalibration({
      id: 'a',
      noise: 'loud',
      roundTrip: -3,
      leak: -20,
      lag: null,
    });
    expect(item).toEqual({
      id: 'a',
      name: '',
      noise: null,
      roundTrip: null,
      leak: -20,
      lag: null,
      tapped: false,
      gate: null,
    });
    expect(problems).toHaveLength(2);
    for (const value of [null, 3, [], {}, { id: 7 }]) {
      expect(parseCalibration(value)).toMatchObject({
        item: null,
        problems: [expect.stringMatching(/left out/)],
      });
    }
  });
});
