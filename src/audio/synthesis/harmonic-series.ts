/**
 * Sums of harmonics that share one phase, so that vibrato bends all of them together. The sum of c(k) sin(k x) over
 * k is taken from the top down (Clenshaw's recurrence), which needs one sine and one cosine of x per sample, and
 * those come from turning a vector; phases and levels are set anew for each block and run in straight lines between.
 */

/** Samples between two settings of phase and levels. */
const BLOCK = 64;

/** How the harmonics of one tone move over time. */
export interface HarmonicMotion {
  readonly harmonics: number;
  /** Phase of the fundamental in radians at a sample. */
  readonly phaseAt: (sample: number) => number;
  /** Writes the amplitudes of harmonics 1, 2, 3 … at a sample into `levels[0…]`. */
  readonly levelsAt: (sample: number, levels: Float64Array) => void;
}

interface Block {
  readonly start: number;
  readonly size: number;
  readonly levels: Float64Array;
  readonly steps: Float64Array;
}

const addBlock = (out: Float64Array, block: Block, phase: number, turn: number): void => {
  const { start, size, levels, steps } = block;
  const top = levels.length - 1;
  const turnCos = Math.cos(turn);
  const turnSin = Math.sin(turn);
  let cos = Math.cos(phase);
  let sin = Math.sin(phase);
  for (let i = 0; i < size; i += 2) {
    const nextCos = cos * turnCos - sin * turnSin;
    const nextSin = sin * turnCos + cos * turnSin;
    const p = 2 * cos;
    const q = 2 * nextCos;
    let p1 = 0;
    let p2 = 0;
    let q1 = 0;
    let q2 = 0;
    for (let k = top; k >= 0; k--) {
      const step = steps[k] ?? 0;
      const level = (levels[k] ?? 0) + i * step;
      const pk = level + p * p1 - p2;
      const qk = level + step + q * q1 - q2;
      p2 = p1;
      p1 = pk;
      q2 = q1;
      q1 = qk;
    }
    out[start + i] = (out[start + i] ?? 0) + p1 * sin;
    if (i + 1 < size) out[start + i + 1] = (out[start + i + 1] ?? 0) + q1 * nextSin;
    cos = nextCos * turnCos - nextSin * turnSin;
    sin = nextSin * turnCos + nextCos * turnSin;
  }
};

/** Adds the sum of the harmonics to `out`, levels and phase moving evenly between blocks. */
export const addHarmonics = (out: Float64Array, motion: HarmonicMotion): void => {
  const levels = new Float64Array(motion.harmonics);
  const next = new Float64Array(motion.harmonics);
  const steps = new Float64Array(motion.harmonics);
  motion.levelsAt(0, next);
  let phase = motion.phaseAt(0);
  for (let start = 0; start < out.length; start += BLOCK) {
    const size = Math.min(BLOCK, out.length - start);
    const nextPhase = motion.phaseAt(start + BLOCK);
    levels.set(next);
    motion.levelsAt(start + BLOCK, next);
    for (let k = 0; k < steps.length; k++) steps[k] = ((next[k] ?? 0) - (levels[k] ?? 0)) / BLOCK;
    addBlock(out, { start, size, levels, steps }, phase, (nextPhase - phase) / BLOCK);
    phase = nextPhase;
  }
};
