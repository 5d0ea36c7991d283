import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodePcm, longestWav, type WavFormat, wavHeader } from '../../../src/core/formats/wav';
import { createDraws, createRandom } from '../../../src/core/theory/random';

const STEREO: WavFormat = { sampleRate: 48000, channels: 2, bits: 16 };

/** Signed little-endian integers, as a reader takes them. */
const decode = (bytes: Uint8Array, bits: 16 | 24): number[] => {
  const width = bits / 8;
  return Array.from({ length: bytes.length / width }, (_, i) => {
    const unsigned = bytes
      .slice(i * width, (i + 1) * width)
      .reduce((sum, byte, place) => sum + byte * 256 ** place, 0);
    return unsigned >= 2 ** (bits - 1) ? unsigned - 2 ** bits : unsigned;
  });
};

const samples = fc.float32Array({ min: -2, max: 2, noNaN: true, maxLength: 64 });
const depth = fc.constantFrom<16 | 24>(16, 24);

describe('samples as integers', () => {
  it('read back within half a step, and clipped beyond full scale', () => {
    fc.assert(
      fc.property(samples, depth, (channel, bits) => {
        const scale = 2 ** (bits - 1);
        decode(encodePcm([channel], bits), bits).forEach((value, i) => {
          const wanted = Math.min(scale - 1, Math.max(-scale, (channel[i] ?? 0) * scale));
          expect(Math.abs(value - wanted)).toBeLessThanOrEqual(0.5);
        });
      }),
    );
  });

  it('are the same in chunks as in one piece, dither included', () => {
    fc.assert(
      fc.property(samples, depth, fc.nat(64), fc.nat(), (channel, bits, cut, seed) => {
        const pair = (from: number, to?: number) => [
          channel.slice(from, to),
          channel.map((x) => -x).slice(from, to),
        ];
        const whole = encodePcm(pair(0), bits, createDraws(seed));
        const draws = createDraws(seed);
        const pieces = [...encodePcm(pair(0, cut), bits, draws), ...encodePcm(pair(cut), bits, draws)];
        expect(pieces).toEqual([...whole]);
      }),
    );
  });

  it('are dithered by the numbers that the generator of the seed draws one by one', () => {
    const random = createRandom(-3);
    const draws = createDraws(-3);
    for (const length of [3, 1, 500]) {
      const drawn = new Float64Array(length);
      draws(drawn);
      expect([...drawn]).toEqual(Array.from(drawn, random));
    }
  });

  it('never move by more than one and a half steps through dither', () => {
    fc.assert(
      fc.property(samples, fc.nat(), (channel, seed) => {
        const plain = channel.map((x) => Math.min(0.99, Math.max(-0.99, x)));
        decode(encodePcm([plain], 16, createDraws(seed)), 16).forEach((value, i) => {
          expect(Math.abs(value - (plain[i] ?? 0) * 32768)).toBeLessThanOrEqual(1.5);
        });
      }),
    );
  });

  it('keep a tone quieter than one step alive through dither, and lose it without', () => {
    const quiet = Float32Array.from({ length: 48000 }, (_, i) => 0.4 * 2 ** -15 * Math.sin(i / 20));
    const correlation = (values: readonly number[]) =>
      values.reduce((sum, value, i) => sum + value * Math.sin(i / 20), 0) / (values.length / 2);
    expect(decode(encodePcm([quiet], 16), 16).every((value) => value === 0)).toBe(true);
    expect(correlation(decode(encodePcm([quiet], 16, createDraws(1)), 16))).toBeCloseTo(0.4, 1);
  });

  it('refuse channels of different lengths', () => {
    expect(() => encodePcm([new Float32Array(2), new Float32Array(3)], 16)).toThrow('need 2 samples, got 3');
  });
});

describe('the header', () => {
  it.each([
    [{ ...STEREO, sampleRate: 0 }, 1],
    [{ ...STEREO, sampleRate: 44100.5 }, 1],
    [{ ...STEREO, channels: 0 }, 1],
    [STEREO, -1],
    [STEREO, 1.5],
    [STEREO, longestWav(STEREO) + 1],
  ])('refuses %o with %d frames', (format, frames) => {
    expect(() => wavHeader(format, frames)).toThrow(RangeError);
  });

  it('holds more than six hours of 48 kHz stereo at 16 bits', () => {
    expect(longestWav(STEREO) / 48000 / 3600).toBeGreaterThan(6);
    expect(wavHeader(STEREO, longestWav(STEREO))).toHaveLength(44);
  });
});
