import { describe, expect, it } from 'vitest';
import { createPromptConvolver } from '../../../src/core/signal/prompt-convolver';
import { createRandom } from '../../../src/core/theory/random';

const noise = (length: number, seed: number): Float32Array => {
  const random = createRandom(seed);
  return Float32Array.from({ length }, () => 2 * random() - 1);
};

/** One term of the sum that defines a convolution. */
const byDefinition = (samples: Float32Array, response: Float32Array, at: number): number => {
  let sum = 0;
  for (let i = 0; i < response.length && i <= at; i += 1) sum += response[i] * samples[at - i];
  return sum;
};

describe('a convolver that answers at once', () => {
  it.each([
    [1, 64],
    [700, 128],
    [1024, 64],
    [3500, 128],
  ])('gives the sums that define it for a response of %i and blocks of %i', (length, block) => {
    const responses = [noise(length, 1), noise(length, 2)] as const;
    const samples = noise(6144, 3);
    const convolver = createPromptConvolver(responses, block);
    const sides = [new Float32Array(samples.length), new Float32Array(samples.length)] as const;
    for (let at = 0; at < samples.length; at += block) {
      const [left, right] = sides.map((side) => side.subarray(at, at + block));
      convolver.process(samples.subarray(at, at + block), left, right);
    }
    // Every 97th sample: all would take a second.
    for (let at = 0; at < samples.length; at += 97)
      for (const side of [0, 1] as const)
        expect(Math.abs(sides[side][at] - byDefinition(samples, responses[side], at))).toBeLessThan(2e-4);
  });

  it.each([[100], [2048], [0], [1.5]])('refuses a block of %f', (block) => {
    expect(() => createPromptConvolver([noise(9, 1), noise(9, 2)], block)).toThrow(
      `a block must divide 1024, got ${block}`,
    );
  });

  it('refuses responses that differ in length', () => {
    expect(() => createPromptConvolver([noise(3, 1), noise(4, 2)], 64)).toThrow(RangeError);
  });
});
