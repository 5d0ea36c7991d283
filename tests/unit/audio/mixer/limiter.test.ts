import { describe, expect, it } from 'vitest';
import { createLimiter } from '../../../../src/audio/mixer/limiter';
import { createRandom } from '../../../../src/core/theory/random';
import { truePeak } from '../../../helpers/loudness';

const RATE = 48000;
const CEILING = -1.2;

const limited = (left: Float32Array, right: Float32Array, block = 128) => {
  const limiter = createLimiter({ sampleRate: RATE, ceiling: CEILING });
  const pad = (samples: Float32Array) => {
    const out = new Float32Array(Math.ceil((samples.length + limiter.delay) / block) * block);
    out.set(samples);
    return out;
  };
  const [one, other] = [pad(left), pad(right)];
  for (let at = 0; at < one.length; at += block) {
    limiter.process(one.subarray(at, at + block), other.subarray(at, at + block));
  }
  const cut = (samples: Float32Array) => samples.slice(limiter.delay, limiter.delay + left.length);
  return [cut(one), cut(other)];
};

const wave = (seconds: number, at: (time: number, frame: number) => number): Float32Array =>
  Float32Array.from({ length: seconds * RATE }, (_, frame) => at(frame / RATE, frame));

/** Bursts of noise without the last few kilohertz below half the sample rate, as converters leave them away. */
const noise = (seed: number) => {
  const random = createRandom(seed);
  let last = 0;
  return wave(1, (time) => {
    const next = 2 * random() - 1;
    const value = 3 * ((next + last) / 2) * (time % 0.25 < 0.1 ? 1 : 0.1);
    last = next;
    return value;
  });
};
const farthest = (one: Float32Array, other: Float32Array): number =>
  one.reduce((most, value, frame) => Math.max(most, Math.abs(value - other[frame])), 0);
const drum = wave(1, (time) => 4 * Math.exp(-40 * (time % 0.2)) * Math.sin(2 * Math.PI * 180 * (time % 0.2)));
const between = wave(1, (_, frame) => 1.3 * Math.sin((Math.PI * frame) / 2 + Math.PI / 4));
const click = wave(0.5, (_, frame) => (frame % 4800 === 100 ? 5 : 0));
const low = wave(1, (time) => 2 * Math.sin(2 * Math.PI * 50 * time));

describe('limiter', () => {
  it.each([
    ['noise', noise(1), noise(2)],
    ['a drum', drum, drum.map((value) => value / 2)],
    ['a peak between samples', between, between],
    ['single samples', click, new Float32Array(click.length)],
    ['a low note', low, low],
  ])('holds %s at the ceiling between samples too', (_, left, right) => {
    const [one, other] = limited(left, right);
    expect(truePeak([one, other])).toBeLessThanOrEqual(-1);
    expect(truePeak([one, other])).toBeGreaterThan(-3);
  });

  it('passes what is below the ceiling unchanged, only later', () => {
    const soft = noise(3).map((value) => value / 8);
    const [one] = limited(soft, soft);
    expect(farthest(one, soft)).toBe(0);
  });

  it('gives both sides the same gain', () => {
    const [one, other] = limited(
      drum,
      drum.map((value) => value / 4),
    );
    const ratios = [...one]
      .map((value, frame) => [value, other[frame]])
      .filter(([value]) => Math.abs(value) > 0.1);
    expect(ratios.length).toBeGreaterThan(1000);
    for (const [value, quarter] of ratios) expect(quarter / value).toBeCloseTo(0.25, 4);
  });

  it('does not depend on the size of the blocks', () => {
    const [small, large] = [limited(drum, noise(4), 128), limited(drum, noise(4), 1000)];
    expect(farthest(small[0], large[0]) + farthest(small[1], large[1])).toBe(0);
  });

  it('lets go again after a peak', () => {
    const peak = wave(1, (time) => (time < 0.01 ? 4 : 0.5) * Math.sin(2 * Math.PI * 440 * time));
    const [one] = limited(peak, peak);
    expect(Math.max(...one.slice(RATE / 2))).toBeCloseTo(0.5, 2);
  });
});
