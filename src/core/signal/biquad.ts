/** Filters a block of samples in place and keeps its state for the next block. */
export type Filter = (block: Float64Array) => void;

/** A second-order section: what comes in and the two samples before it, less the two that went out before. */
export interface Biquad {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
}

/** Below this a state is silence; smaller numbers still would slow the processor down (denormals). */
const SILENCE = 1e-30;

const section = ({ b0, b1, b2, a1, a2 }: Biquad): Filter => {
  const state = new Float64Array(2);
  return (block) => {
    let s1 = state[0] ?? 0;
    let s2 = state[1] ?? 0;
    for (let i = 0; i < block.length; i += 1) {
      const x = block[i] ?? 0;
      const y = b0 * x + s1;
      s1 = b1 * x - a1 * y + s2;
      s2 = b2 * x - a2 * y;
      block[i] = y;
    }
    state[0] = Math.abs(s1) < SILENCE ? 0 : s1;
    state[1] = Math.abs(s2) < SILENCE ? 0 : s2;
  };
};

/** Quality factors of the second-order sections of Butterworth filters. */
const BUTTERWORTH = {
  2: [Math.SQRT1_2],
  4: [1 / (2 * Math.cos(Math.PI / 8)), 1 / (2 * Math.cos((3 * Math.PI) / 8))],
} as const;

export interface FilterSpec {
  readonly kind: 'low-pass' | 'high-pass';
  /** Hz, below half the sample rate. */
  readonly cutoff: number;
  readonly order: keyof typeof BUTTERWORTH;
}

/** Biquad by the bilinear transform ("Audio EQ Cookbook", R. Bristow-Johnson, W3C note 2021). */
const designed = ({ kind, cutoff }: FilterSpec, sampleRate: number, q: number): Biquad => {
  const w = (2 * Math.PI * cutoff) / sampleRate;
  const alpha = Math.sin(w) / (2 * q);
  const cos = Math.cos(w);
  const a0 = 1 + alpha;
  const edge = (kind === 'low-pass' ? 1 - cos : 1 + cos) / 2 / a0;
  const middle = kind === 'low-pass' ? 2 * edge : -2 * edge;
  return { b0: edge, b1: middle, b2: edge, a1: (-2 * cos) / a0, a2: (1 - alpha) / a0 };
};

/** Butterworth filters in a row, at a sample rate in Hz. */
export const createFilter = (specs: readonly FilterSpec[], sampleRate: number): Filter => {
  const sections = specs.flatMap((spec) =>
    BUTTERWORTH[spec.order].map((q) => section(designed(spec, sampleRate, q))),
  );
  return (block) => {
    for (const filter of sections) filter(block);
  };
};
