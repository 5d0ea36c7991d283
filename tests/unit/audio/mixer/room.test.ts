import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roomImpulse } from '../../../../src/audio/mixer/room';
import { transform } from '../../../helpers/drum-spectrum';

const energy = (samples: Float32Array): number => samples.reduce((sum, value) => sum + value * value, 0);
const room = { sampleRate: 48000, seed: 1, seconds: 0.42 };

/** Energy left at each sample, in dB of the whole. */
const decayCurve = (samples: Float32Array): Float64Array => {
  const curve = Float64Array.from(samples, (value) => value * value);
  for (let i = curve.length - 2; i >= 0; i -= 1) curve[i] = (curve[i] ?? 0) + (curve[i + 1] ?? 0);
  const whole = curve[0] ?? 1;
  return curve.map((value) => 10 * Math.log10(value / whole));
};

/** Reverberation time by ISO 3382's T20: the slope from −5 to −25 dB, stretched to 60 dB. */
const reverberation = (samples: Float32Array, sampleRate: number): number => {
  const curve = decayCurve(samples);
  const from = curve.findIndex((level) => level <= -5);
  const to = curve.findIndex((level) => level <= -25);
  return (3 * (to - from)) / sampleRate;
};

const shareBetween = (samples: Float32Array, sampleRate: number, low: number, high: number): number => {
  const re = new Float64Array(65536);
  re.set(samples);
  const im = new Float64Array(re.length);
  transform(re, im);
  let inside = 0;
  let whole = 0;
  for (let i = 1; i < re.length / 2; i += 1) {
    const power = (re[i] ?? 0) ** 2 + (im[i] ?? 0) ** 2;
    const hz = (i * sampleRate) / re.length;
    whole += power;
    if (hz >= low && hz < high) inside += power;
  }
  return inside / whole;
};

const correlation = (a: Float32Array, b: Float32Array): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0) / Math.sqrt(energy(a) * energy(b));

describe('roomImpulse', () => {
  it('has energy 1 on each side and is as long as asked', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.constantFrom(22050, 44100, 48000, 96000),
        fc.double({ min: 0.1, max: 0.8, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (seed, sampleRate, seconds, early) => {
          const { left, right } = roomImpulse({ seed, sampleRate, seconds, early });
          expect(energy(left)).toBeCloseTo(1, 4);
          expect(energy(right)).toBeCloseTo(1, 4);
          expect(left.length).toBe(Math.round(seconds * sampleRate));
          expect(right.length).toBe(left.length);
        },
      ),
      { numRuns: 25 },
    );
  });

  it.each([0.25, 0.35, 0.42, 0.5, 0.8])('dies away in about %f s', (seconds) => {
    const times = [1, 2, 3].flatMap((seed) => {
      const { left, right } = roomImpulse({ ...room, seed, seconds });
      return [reverberation(left, 48000), reverberation(right, 48000)];
    });
    const mean = times.reduce((sum, time) => sum + time, 0) / times.length;
    expect(mean / seconds).toBeGreaterThan(0.8);
    expect(mean / seconds).toBeLessThan(1.15);
  });

  it('is the same for the same seed and another room for another', () => {
    const first = roomImpulse(room);
    expect(roomImpulse(room)).toEqual(first);
    const other = roomImpulse({ ...room, seed: 2 });
    expect(Math.abs(correlation(first.left, other.left))).toBeLessThan(0.3);
  });

  it.each([1, 2, 3, 4, 5])('gives two ears different rooms (seed %i)', (seed) => {
    const { left, right } = roomImpulse({ ...room, seed });
    expect(Math.abs(correlation(left, right))).toBeLessThan(0.3);
    const tails = [left, right].map((side) => side.subarray(0.05 * 48000));
    expect(Math.abs(correlation(tails[0] ?? left, tails[1] ?? right))).toBeLessThan(0.1);
  });

  it('answers within a few milliseconds, never at once, and ends in silence', () => {
    const { left } = roomImpulse(room);
    const peak = left.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    const first = left.findIndex((value) => Math.abs(value) > peak / 10);
    expect(first / 48).toBeGreaterThan(0.5);
    expect(first / 48).toBeLessThan(10);
    expect(Math.abs(left.at(-1) ?? 1)).toBe(0);
    const end = left.subarray(-480).reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    expect(end).toBeLessThan(peak * 1e-3);
  });

  it('keeps out of the bass and of the highs', () => {
    const { left } = roomImpulse(room);
    expect(shareBetween(left, 48000, 0, 90)).toBeLessThan(0.03);
    expect(shareBetween(left, 48000, 8000, 24000)).toBeLessThan(0.06);
    expect(shareBetween(left, 48000, 200, 4000)).toBeGreaterThan(0.7);
  });

  it('loses its highs first', () => {
    const { left } = roomImpulse(room);
    const early = shareBetween(left.subarray(0, 0.1 * 48000), 48000, 3000, 20000);
    const late = shareBetween(left.subarray(0.2 * 48000), 48000, 3000, 20000);
    expect(late).toBeLessThan(early / 2);
  });

  it('has more in its first 30 ms when asked for more early reflections', () => {
    const start = (early: number): number =>
      energy(roomImpulse({ ...room, early }).left.subarray(0, 0.03 * 48000));
    expect(start(0.7)).toBeGreaterThan(start(0.35) + 0.1);
    expect(start(0.35)).toBeGreaterThan(start(0) + 0.1);
  });

  it.each([
    [{ ...room, seconds: 0.05 }, 'seconds must be 0.1–2, got 0.05'],
    [{ ...room, seconds: Number.NaN }, 'seconds must be 0.1–2, got NaN'],
    [{ ...room, sampleRate: 3000 }, 'sampleRate must be 4000–192000, got 3000'],
    [{ ...room, early: 1.5 }, 'early must be 0–1, got 1.5'],
  ])('refuses what is out of bounds: %o', (shape, message) => {
    expect(() => roomImpulse(shape)).toThrow(new RangeError(message));
  });
});
