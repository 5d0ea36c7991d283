import { describe, expect, it } from 'vitest';
import { createStereoConvolver } from '../../../src/core/signal/stereo-convolver';
import { createRandom } from '../../../src/core/theory/random';

const noise = (length: number, seed: number): Float32Array => {
  const random = createRandom(seed);
  return Float32Array.from({ length }, () => 2 * random() - 1);
};

/** The sum that defines a convolution, term by term. */
const byDefinition = (samples: Float32Array, response: Float32Array): number[] =>
  Array.from({ length: samples.length + response.length - 1 }, (_, at) => {
    let sum = 0;
    for (let i = 0; i < response.length; i += 1) sum += response[i] * (samples[at - i] ?? 0);
    return sum;
  });

describe('a convolver of one signal and two responses', () => {
  it.each([
    [37, [500]],
    [37, [1, 2, 3, 494]],
    [200, [10, 90, 400]],
    [1, [300, 200]],
  ])('gives the sums that define it for a response of %i and stretches of %j', (length, stretches) => {
    const responses = [noise(length, 1), noise(length, 2)] as const;
    const samples = noise(500, 3);
    const convolver = createStereoConvolver(responses);
    const got: number[][] = [[], []];
    // What still rings comes out with the silence after it.
    const heard = Float32Array.from([...samples, ...new Float32Array(length - 1)]);
    let at = 0;
    for (const stretch of [...stretches, length - 1]) {
      const sides = [new Float32Array(stretch).fill(7), new Float32Array(stretch).fill(7)] as const;
      convolver.process(heard.subarray(at, at + stretch), sides);
      at += stretch;
      for (const side of [0, 1]) got[side].push(...sides[side]);
    }
    for (const side of [0, 1] as const) {
      const all = got[side];
      const wanted = byDefinition(samples, responses[side]);
      expect(all).toHaveLength(wanted.length);
      expect(Math.max(...all.map((value, i) => Math.abs(value - wanted[i])))).toBeLessThan(1e-4);
    }
  });

  it('refuses responses that differ in length', () => {
    expect(() => createStereoConvolver([new Float32Array(3), new Float32Array(4)])).toThrow(RangeError);
  });
});
