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

/** What a section holds between two blocks; all 0 at its beginning. */
export interface FilterMemory {
  one: number;
  other: number;
}

/** Filters a block in place, and goes on where the block before has ended. */
export const runFilter = (
  block: Float32Array | Float64Array,
  { b0, b1, b2, a1, a2 }: Biquad,
  memory: FilterMemory,
): void => {
  let { one, other } = memory;
  for (let i = 0; i < block.length; i += 1) {
    const x = block[i] ?? 0;
    const y = b0 * x + one;
    one = b1 * x - a1 * y + other;
    other = b2 * x - a2 * y;
    block[i] = y;
  }
  memory.one = Math.abs(one) < SILENCE ? 0 : one;
  memory.other = Math.abs(other) < SILENCE ? 0 : other;
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
    BUTTERWORTH[spec.order].map((q) => ({
      biquad: designed(spec, sampleRate, q),
      memory: { one: 0, other: 0 },
    })),
  );
  return (block) => {
    for (const { biquad, memory } of sections) runFilter(block, biquad, memory);
  };
};
