import { type Biquad, runFilter } from '../../core/signal/biquad';

/**
 * Second-order filters by the Audio EQ Cookbook (W3C Group Note, 8 June 2021, after R. Bristow-Johnson), for shaping
 * sounds that are there already.
 */

const angle = (hz: number, sampleRate: number): number => {
  if (!(hz > 0 && hz < sampleRate / 2))
    throw new RangeError(`a filter needs a frequency up to ${sampleRate / 2} Hz, got ${hz}`);
  return (2 * Math.PI * hz) / sampleRate;
};

/** Lets every frequency through and turns phases, by half a turn at `hz`. Throws RangeError beyond half the rate. */
export const allPass = (hz: number, q: number, sampleRate: number): Biquad => {
  const w = angle(hz, sampleRate);
  const alpha = Math.sin(w) / (2 * q);
  const a0 = 1 + alpha;
  const middle = (-2 * Math.cos(w)) / a0;
  const end = (1 - alpha) / a0;
  return { b0: end, b1: middle, b2: 1, a1: middle, a2: end };
};

/** Raises what lies above `hz` by so many dB, half of it at `hz`. Throws RangeError beyond half the rate. */
export const highShelf = (hz: number, decibels: number, sampleRate: number): Biquad => {
  const w = angle(hz, sampleRate);
  const a = 10 ** (decibels / 40);
  const cos = Math.cos(w);
  const slope = 2 * Math.sqrt(a) * (Math.sin(w) / Math.SQRT2);
  const a0 = a + 1 - (a - 1) * cos + slope;
  return {
    b0: (a * (a + 1 + (a - 1) * cos + slope)) / a0,
    b1: (-2 * a * (a - 1 + (a + 1) * cos)) / a0,
    b2: (a * (a + 1 + (a - 1) * cos - slope)) / a0,
    a1: (2 * (a - 1 - (a + 1) * cos)) / a0,
    a2: (a + 1 - (a - 1) * cos - slope) / a0,
  };
};

/** Raises what lies around `hz` by so many dB, the wider the smaller `q`. Throws RangeError beyond half the rate. */
export const bell = (hz: number, decibels: number, q: number, sampleRate: number): Biquad => {
  const w = angle(hz, sampleRate);
  const a = 10 ** (decibels / 40);
  const alpha = Math.sin(w) / (2 * q);
  const a0 = 1 + alpha / a;
  const middle = (-2 * Math.cos(w)) / a0;
  return {
    b0: (1 + alpha * a) / a0,
    b1: middle,
    b2: (1 - alpha * a) / a0,
    a1: middle,
    a2: (1 - alpha / a) / a0,
  };
};

/** Filters a sound in place by two filters at once: each waits for its own last sample, and the other fills the time. */
const runTwo = (samples: Float32Array, first: Biquad, second: Biquad): void => {
  const { b0, b1, b2, a1, a2 } = first;
  const { b0: c0, b1: c1, b2: c2, a1: d1, a2: d2 } = second;
  let [one, other, third, fourth] = [0, 0, 0, 0];
  for (let i = 0; i < samples.length; i += 1) {
    const x = samples[i] ?? 0;
    const y = b0 * x + one;
    one = b1 * x - a1 * y + other;
    other = b2 * x - a2 * y;
    const z = c0 * y + third;
    third = c1 * y - d1 * z + fourth;
    fourth = c2 * y - d2 * z;
    samples[i] = z;
  }
};

/** The samples after these filters, one after another. */
export const filtered = (samples: Float32Array, filters: readonly Biquad[]): Float32Array => {
  const out = new Float32Array(samples);
  for (let i = 0; i < filters.length; i += 2) {
    const [first, second] = filters.slice(i, i + 2);
    if (first !== undefined && second !== undefined) runTwo(out, first, second);
    else if (first !== undefined) runFilter(out, first, { one: 0, other: 0 });
  }
  return out;
};
