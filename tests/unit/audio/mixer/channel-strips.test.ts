import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CHANNEL_STRIPS, placeOf, roundedOff } from '../../../../src/audio/mixer/channel-strips';

const rounding = { from: 0.25, to: 0.65 };
const amplitude = fc.double({ min: -4, max: 4, noNaN: true });

describe('rounding off peaks', () => {
  it('leaves what lies below it, keeps the order and never passes its limit', () => {
    fc.assert(
      fc.property(amplitude, amplitude, (one, other) => {
        expect(Math.abs(roundedOff(one, rounding))).toBeLessThanOrEqual(rounding.to);
        expect(roundedOff(-one, rounding)).toBeCloseTo(-roundedOff(one, rounding), 12);
        if (Math.abs(one) <= rounding.from) expect(roundedOff(one, rounding)).toBe(one);
        if (one < other) expect(roundedOff(one, rounding)).toBeLessThanOrEqual(roundedOff(other, rounding));
      }),
    );
  });

  it('bends without a corner', () => {
    const slope = (at: number) => (roundedOff(at + 1e-6, rounding) - roundedOff(at, rounding)) / 1e-6;
    expect(slope(rounding.from + 1e-6)).toBeCloseTo(1, 3);
  });
});

describe('places in the mix', () => {
  it('put kick and snare in the middle and the cymbals beside them', () => {
    expect([36, 38, 42, 46, 49, 51].map((key) => Math.sign(Number(placeOf('drums', 'sticks', key))))).toEqual(
      [0, 0, 1, 1, 1, -1],
    );
  });

  it('put the knocked rim beside the snare, nearer than the cymbals', () => {
    const rim = Number(placeOf('drums', 'sticks', 37));
    expect(rim).toBeGreaterThan(0.3);
    expect(rim).toBeLessThan(Number(placeOf('drums', 'sticks', 42)));
  });

  it('keep the click dry', () => {
    expect(CHANNEL_STRIPS.click.send).toBeNull();
  });
});
