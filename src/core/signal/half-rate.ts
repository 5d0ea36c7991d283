/**
 * Down to half the sample rate and up again, block by block, for what needs no highs and then costs half. A half-band
 * filter of two branches of all-passes does both at half the rate (Valenzuela and Constantinides, "Digital signal
 * processing schemes for efficient interpolation and decimation", IEE Proceedings G 130, 1983): it passes what lies below
 * 0.17 of the rate, stops what lies above 0.33 of it by more than 100 dB, and bends the phase a little.
 */

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

const COEFFICIENTS = allPassCoefficients(SECTIONS, TRANSITION);
const isEven = (_: number, index: number): boolean => index % 2 === 0;
/** The branch without a delay, and the one that is a sample of the whole rate late. */
const PROMPT = COEFFICIENTS.filter(isEven);
const LATE = COEFFICIENTS.filter((_, index) => index % 2 !== 0);

/** All-passes one after another. */
class Branch {
  private readonly coefficients: Float64Array;
  /** The last sample into each, and out of it. */
  private readonly states: Float64Array;

  constructor(coefficients: readonly number[]) {
    this.coefficients = Float64Array.from(coefficients);
    this.states = new Float64Array(2 * coefficients.length);
  }

  /** In place. */
  run(samples: Float64Array): void {
    const { coefficients, states } = this;
    for (let section = 0; section < coefficients.length; section += 1) {
      const coefficient = coefficients[section] ?? 0;
      let into = states[2 * section] ?? 0;
      let out = states[2 * section + 1] ?? 0;
      for (let i = 0; i < samples.length; i += 1) {
        const sample = samples[i] ?? 0;
        out = coefficient * (sample - out) + into;
        into = sample;
        samples[i] = out;
      }
      states[2 * section] = into;
      states[2 * section + 1] = out;
    }
  }
}

/** @param block samples taken at a time, an even number */
export const createHalver = (block: number): Halver => {
  const [prompt, late] = [new Branch(PROMPT), new Branch(LATE)];
  const [even, odd] = [new Float64Array(block / 2), new Float64Array(block / 2)];
  let last = 0;
  return {
    process: (samples, out) => {
      for (let i = 0; i < even.length; i += 1) {
        even[i] = samples[2 * i] ?? 0;
        odd[i] = last;
        last = samples[2 * i + 1] ?? 0;
      }
      prompt.run(even);
      late.run(odd);
      for (let i = 0; i < even.length; i += 1) out[i] = 0.5 * ((even[i] ?? 0) + (odd[i] ?? 0));
    },
  };
};

/** @param block samples taken at a time */
export const createDoubler = (block: number): Doubler => {
  const [prompt, late] = [new Branch(PROMPT), new Branch(LATE)];
  const [even, odd] = [new Float64Array(block), new Float64Array(block)];
  return {
    process: (samples, out) => {
      even.set(samples);
      odd.set(samples);
      prompt.run(even);
      late.run(odd);
      for (let i = 0; i < even.length; i += 1) {
        out[2 * i] = even[i] ?? 0;
        out[2 * i + 1] = odd[i] ?? 0;
      }
    },
  };
};

/** Samples within which the filter has rung out (its slowest all-pass is 120 dB down after 150). */
const RINGS = 256;

/** The filter at the whole rate. */
const filtered = (samples: Float64Array): Float64Array => {
  const half = Math.ceil((samples.length + RINGS) / 2);
  const taken = (phase: number, coefficients: readonly number[]): Float64Array => {
    const every = Float64Array.from({ length: half }, (_, i) => samples[2 * i + phase] ?? 0);
    new Branch(coefficients).run(every);
    return every;
  };
  const [evenPrompt, oddPrompt] = [taken(0, PROMPT), taken(1, PROMPT)];
  const [evenLate, oddLate] = [taken(0, LATE), taken(1, LATE)];
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
