import { describe, expect, it } from 'vitest';
import { createFilter, type FilterSpec, runFilter, runFilterOnBoth } from '../../../src/core/signal/biquad';
import { createRandom } from '../../../src/core/theory/random';

const RATE = 24_000;

/** Gain of the filters at a frequency, from their answer to an impulse taken in blocks. */
const gainAt = (specs: readonly FilterSpec[], hz: number): number => {
  const filter = createFilter(specs, RATE);
  let re = 0;
  let im = 0;
  for (let from = 0; from < 8192; from += 128) {
    const block = new Float64Array(128);
    if (from === 0) block[0] = 1;
    filter(block);
    block.forEach((value, i) => {
      re += value * Math.cos((2 * Math.PI * hz * (from + i)) / RATE);
      im -= value * Math.sin((2 * Math.PI * hz * (from + i)) / RATE);
    });
  }
  return Math.hypot(re, im);
};

/**
 * Of the definition: 1 / √(1 + Ω^(2n)) with n = 4, Ω the frequency re the corner for a low-pass and its inverse for a
 * high-pass, both as the bilinear transform maps them (S. Butterworth, "On the theory of filter amplifiers", 1930).
 */
const butterworth = ({ kind, cutoff }: FilterSpec, hz: number): number => {
  const ratio = Math.tan((Math.PI * hz) / RATE) / Math.tan((Math.PI * cutoff) / RATE);
  return 1 / Math.sqrt(1 + (kind === 'low-pass' ? ratio : 1 / ratio) ** 8);
};

describe('filters in a row', () => {
  it.each<{ specs: readonly FilterSpec[] }>([
    { specs: [{ kind: 'low-pass', cutoff: 1000 }] },
    { specs: [{ kind: 'high-pass', cutoff: 2500 }] },
    {
      specs: [
        { kind: 'high-pass', cutoff: 1000 },
        { kind: 'low-pass', cutoff: 2500 },
      ],
    },
    {
      specs: [
        { kind: 'high-pass', cutoff: 200 },
        { kind: 'low-pass', cutoff: 7000 },
        { kind: 'low-pass', cutoff: 3000 },
      ],
    },
  ])('have the gain of Butterworth filters of the fourth order: $specs', ({ specs }) => {
    for (const hz of [120, 500, 1000, 1800, 2500, 5000, 9000]) {
      const wanted = specs.reduce((gain, spec) => gain * butterworth(spec, hz), 1);
      expect(gainAt(specs, hz)).toBeCloseTo(wanted, 9);
    }
  });
});

const SECTION = { b0: 0.9, b1: -1.6, b2: 0.75, a1: -1.6, a2: 0.65 };

it('filters two sides at once as it does each alone, from block to block', () => {
  const random = createRandom(5);
  const sides = [0, 1].map(() => Float32Array.from({ length: 300 }, () => 2 * random() - 1));
  const [left, right] = sides.map((side) => side.slice());
  const [one, other] = [
    { one: 0, other: 0 },
    { one: 0, other: 0 },
  ];
  for (const [from, to] of [
    [0, 100],
    [100, 300],
  ])
    runFilterOnBoth([left.subarray(from, to), right.subarray(from, to)], SECTION, [one, other]);
  for (const side of sides) runFilter(side, SECTION, { one: 0, other: 0 });
  expect([left, right]).toEqual(sides);
  expect(one).not.toEqual(other);
});
