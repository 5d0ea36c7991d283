import { describe, expect, it } from 'vitest';
import {
  type Calibration,
  lagOf,
  latenessOf,
  noiseOf,
  parseCalibration,
} from '../../../src/core/hearing/calibration';
import { asSeconds } from '../../../src/core/theory/units';

const known = {
  id: 'lapel',
  name: 'Lapel',
  noise: -58,
  roundTrip: asSeconds(0.08),
  way: asSeconds(0.085),
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
    const lateness = (known: Calibration | null, way: number | null = null) =>
      latenessOf({ known, way, guess: 0.04 });
    expect(lateness(known)).toBe(0.1);
    expect(lateness({ ...known, lag: null })).toBe(0.08);
    expect(lateness({ ...known, lag: null, roundTrip: null })).toBe(0.04);
    expect(lateness(null)).toBe(0.04);
    // The way of the band is better than a guess.
    expect(lateness(null, 0.09)).toBe(0.09);
  });

  it('moves with the way of the band, as each opening of a microphone takes another time', () => {
    const lateness = (now: Calibration, way: number | null) => latenessOf({ known: now, way, guess: 0.04 });
    expect(lateness(known, 0.095)).toBeCloseTo(0.11, 9);
    expect(lateness({ ...known, lag: null }, 0.075)).toBeCloseTo(0.07, 9);
    // Another loudspeaker, or none that is heard, or a calibration of old, is no measure.
    expect([lateness(known, 0.3), lateness(known, null), lateness({ ...known, way: null }, 0.2)]).toEqual([
      0.1, 0.1, 0.1,
    ]);
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
      way: null,
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
