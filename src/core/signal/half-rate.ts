/**
 * Down to half the sample rate and up again, block by block, for what needs no highs and then costs half. A half-band
 * filter of two branches of all-passes does both at half the rate (Valenzuela and Constantinides, "Digital signal
 * processing schemes for efficient interpolation and decimation", IEE Proceedings G 130, 1983): it passes what lies below
 * 0.17 of the rate, stops what lies above 0.33 of it by more than 100 dB, and bends the phase a little.
 */
import { settled } from './settled';

/** Takes blocks of an even length at the whole rate and writes half as many samples. */
export interface Halver {
  process(samples: Float32Array, out: Float32Array): void;
}

/** Takes blocks at half the rate and writes twice as many samples. */
export interface Doubler {
  process(samples: Float32Array, out: Float32Array): void;
}

/** All-passes in both branches together. */
const SECTIONS = 5;
/** From the end of what passes to a quarter of the rate, as a share of the rate. */
const TRANSITION = 0.08;

/** A sum of a theta series, until its terms vanish. */
const thetaSum = (term: (i: number) => number, first: number): number => {
  let sum = 0;
  for (let i = first; i < first + 8; i += 1) sum += term(i);
  return sum;
};

/** The coefficients of an elliptic half-band filter's all-passes, lowest first, by the series of its elliptic functions. */
const allPassCoefficients = (sections: number, transition: number): readonly number[] => {
  const k = Math.tan(((1 - 4 * transition) * Math.PI) / 4) ** 2;
  const root = (1 - k * k) ** 0.25;
  const e = (0.5 * (1 - root)) / (1 + root);
  const q = e * (1 + e ** 4 * (2 + e ** 4 * (15 + 150 * e ** 4)));
  const order = 2 * sections + 1;
  return Array.from({ length: sections }, (_, index) => {
    const angle = ((index + 1) * Math.PI) / order;
    const above = thetaSum((i) => (-1) ** i * q ** (i * (i + 1)) * Math.sin((2 * i + 1) * angle), 0);
    const below = 0.5 + thetaSum((i) => (-1) ** i * q ** (i * i) * Math.cos(2 * i * angle), 1);
    const w = ((above * q ** 0.25) / below) ** 2;
    const x = Math.sqrt((1 - w * k) * (1 - w / k)) / (1 + w);
    return (1 - x) / (1 + x);
  });
};

const COEFFICIENTS = Float64Array.from(allPassCoefficients(SECTIONS, TRANSITION));
/**
 * Both branches: all-passes 0, 2 and 4 one after another, which are prompt, and 1 and 3, which are a sample of the whole
 * rate late. Each waits for what it gave last, so that five side by side take little longer than one.
 */
class Branches {
  /** The last sample into each, and behind these the last out of each. */
  private readonly states = new Float64Array(2 * SECTIONS);

  /** Filters so many samples of each in place. */
  run(prompt: Float64Array, late: Float64Array, count: number): void {
    const { states } = this;
    const [c0, c1, c2] = [COEFFICIENTS[0] ?? 0, COEFFICIENTS[1] ?? 0, COEFFICIENTS[2] ?? 0];
    const [c3, c4] = [COEFFICIENTS[3] ?? 0, COEFFICIENTS[4] ?? 0];
    let [i0, i1, i2] = [states[0] ?? 0, states[1] ?? 0, states[2] ?? 0];
    let [i3, i4] = [states[3] ?? 0, states[4] ?? 0];
    let [o0, o1, o2] = [states[5] ?? 0, states[6] ?? 0, states[7] ?? 0];
    let [o3, o4] = [states[8] ?? 0, states[9] ?? 0];
    for (let i = 0; i < count; i += 1) {
      const one = prompt[i] ?? 0;
      o0 = c0 * (one - o0) + i0;
      i0 = one;
      o2 = c2 * (o0 - o2) + i2;
      i2 = o0;
      o4 = c4 * (o2 - o4) + i4;
      i4 = o2;
      prompt[i] = o4;
      const other = late[i] ?? 0;
      o1 = c1 * (other - o1) + i1;
      i1 = other;
      o3 = c3 * (o1 - o3) + i3;
      i3 = o1;
      late[i] = o3;
    }
    [states[0], states[1], states[2]] = [settled(i0), settled(i1), settled(i2)];
    [states[3], states[4]] = [settled(i3), settled(i4)];
    [states[5], states[6], states[7]] = [settled(o0), settled(o1), settled(o2)];
    [states[8], states[9]] = [settled(o3), settled(o4)];
  }
}

/** @param block most samples taken at a time, an even number */
export const createHalver = (block: number): Halver => {
  const branches = new Branches();
  const [even, odd] = [new Float64Array(block / 2), new Float64Array(block / 2)];
  let last = 0;
  return {
    process: (samples, out) => {
      const count = samples.length / 2;
      for (let i = 0; i < count; i += 1) {
        even[i] = samples[2 * i] ?? 0;
        odd[i] = last;
        last = samples[2 * i + 1] ?? 0;
      }
      branches.run(even, odd, count);
      for (let i = 0; i < count; i += 1) out[i] = 0.5 * ((even[i] ?? 0) + (odd[i] ?? 0));
    },
  };
};

/** @param block most samples taken at a time */
export const createDoubler = (block: number): Doubler => {
  const branches = new Branches();
  const [even, odd] = [new Float64Array(block), new Float64Array(block)];
  return {
    process: (samples, out) => {
      even.set(samples);
      odd.set(samples);
      branches.run(even, odd, samples.length);
      for (let i = 0; i < samples.length; i += 1) {
        out[2 * i] = even[i] ?? 0;
        out[2 * i + 1] = odd[i] ?? 0;
      }
    },
  };
};

/** Samples within which the filter has rung out (its slowest all-pass is 120 dB down after 150). */
const RINGS = 256;

/** How much longer than twice its length a response sounds between a halver and a doubler, in samples of the whole rate. */
export const HALF_RATE_RINGS = 2 * RINGS;

/** The filter at the whole rate. */
const filtered = (samples: Float64Array): Float64Array => {
  const half = Math.ceil((samples.length + RINGS) / 2);
  const every = (phase: number): Float64Array =>
    Float64Array.from({ length: half }, (_, i) => samples[2 * i + phase] ?? 0);
  const [evenPrompt, evenLate, oddPrompt, oddLate] = [every(0), every(0), every(1), every(1)];
  new Branches().run(evenPrompt, evenLate, half);
  new Branches().run(oddPrompt, oddLate, half);
  const out = new Float64Array(2 * half);
  for (let i = 0; i < half; i += 1) {
    out[2 * i] = 0.5 * ((evenPrompt[i] ?? 0) + (oddLate[i - 1] ?? 0));
    out[2 * i + 1] = 0.5 * ((oddPrompt[i] ?? 0) + (evenLate[i] ?? 0));
  }
  return out;
};

/**
 * A response at half the rate as it sounds at the whole one, between a halver and a doubler: but for what they fold over,
 * which lies a hundred dB lower. Longer than twice the response by what the filters ring.
 */
export const heardThroughHalfRate = (response: Float32Array): Float32Array => {
  const spread = new Float64Array(2 * response.length);
  response.forEach((value, i) => {
    spread[2 * i] = value;
  });
  return Float32Array.from(filtered(filtered(spread)));
};
