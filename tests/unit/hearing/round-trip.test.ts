import { describe, expect, it } from 'vitest';
import { CHIRPS_AT, CHIRPS_LAST, chirp, findRoundTrip } from '../../../src/core/hearing/round-trip';
import { createRandom, seedFrom } from '../../../src/core/theory/random';

const RATE = 48_000;

/** Everything that is sent while the way is measured. */
const sent = (): Float32Array => {
  const out = new Float32Array(Math.round(CHIRPS_LAST * RATE));
  for (const at of CHIRPS_AT) out.set(chirp(RATE), Math.round(at * RATE));
  return out;
};

/** What comes back: each way with its delay in samples and its gain, over noise of so much amplitude. */
const comingBack = (ways: readonly (readonly [number, number])[], noise: number): Float32Array => {
  const random = createRandom(seedFrom(7));
  const from = sent();
  return from.map((_, i) =>
    ways.reduce((sum, [delay, gain]) => sum + gain * (from[i - delay] ?? 0), noise * (2 * random() - 1)),
  );
};

describe('the way from the page to the page', () => {
  it.each([0, 480, 4801, 14_403, 30_000])('is found to the sample over %i samples', (delay) => {
    const found = findRoundTrip(sent(), comingBack([[delay, 0.1]], 0), RATE);
    expect((found?.seconds ?? -1) * RATE).toBeCloseTo(delay, 6);
    expect(found?.gain).toBeCloseTo(-20, 1);
  });

  it('is found within 1 ms in noise as loud as the chirp that comes back', () => {
    const found = findRoundTrip(sent(), comingBack([[5000, 0.05]], 0.02), RATE);
    expect(Math.abs((found?.seconds ?? 9) - 5000 / RATE)).toBeLessThan(0.001);
  });

  it('is that of the direct sound, not of a louder wall', () => {
    // A wall 1.7 m behind comes 10 ms later (343 m/s).
    const found = findRoundTrip(
      sent(),
      comingBack(
        [
          [2400, 0.07],
          [2880, 0.1],
        ],
        0.001,
      ),
      RATE,
    );
    expect(found?.seconds).toBeCloseTo(0.05, 4);
  });

  it('is not found where nothing comes back, and where nothing was sent', () => {
    expect(findRoundTrip(sent(), comingBack([], 0.05), RATE)).toBeNull();
    expect(findRoundTrip(new Float32Array(RATE), comingBack([[100, 1]], 0), RATE)).toBeNull();
  });

  it('is not taken from a noise that falls on one of the chirps', () => {
    const heard = new Float32Array(sent().length);
    heard.set(chirp(RATE), Math.round(CHIRPS_AT[1] * RATE) + 3000);
    expect(findRoundTrip(sent(), heard, RATE)).toBeNull();
  });

  it('is measured with chirps that do not hurt: a fifth of full scale, with soft edges', () => {
    const one = chirp(RATE);
    expect(Math.max(...one.map(Math.abs))).toBeLessThanOrEqual(0.2);
    expect([Math.abs(one[0]), Math.abs(one.at(-1) ?? 1) < 0.001]).toEqual([0, true]);
  });
});
