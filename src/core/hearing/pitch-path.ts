/** The most likely pitch after all that was heard so far; -1 stands for no pitch. */
export interface PitchPath {
  /**
   * Takes in how well each pitch of the grid explains the latest window, and how well no pitch does (both in the same
   * unit, higher is better), and returns the best pitch's place in the grid, or −1.
   */
  step(evidence: Float64Array, unvoiced: number): number;
  /** How good the best way to each pitch is after the latest step, re the best of all; overwritten by later steps. */
  scores(): Float64Array;
  /** The same of no pitch. */
  silence(): number;
}

/** What a path of pitch through time pays, in the unit of the evidence. */
export interface PathCosts {
  /** Of moving so many places along the grid in one step; the first is for staying. */
  readonly moves: readonly number[];
  /** Of leaping to a pitch from anywhere else. */
  readonly leap: number;
  /** Of becoming voiced (on top of the leap) and unvoiced. */
  readonly start: number;
  readonly stop: number;
}

/**
 * The forward half of the Viterbi algorithm (A. Viterbi, IEEE Trans. Information Theory 13, 1967): in every step each
 * pitch keeps the score of the best way to it. What speaks for a change adds up until it outweighs its cost: within
 * a few milliseconds in a clear sound, later in a muddled one.
 */
export const createPitchPath = (size: number, { moves, leap, start, stop }: PathCosts): PitchPath => {
  // A move dearer than a leap is never made.
  const near = Float64Array.from(moves.filter((cost) => cost < leap));
  // Nothing lies beside the grid: no need to ask where it ends.
  const margin = near.length;
  const row = (): Float64Array => new Float64Array(size + 2 * margin).fill(Number.NEGATIVE_INFINITY);
  let scores = row();
  let next = row();
  let silent = 0;

  const reached = (at: number): number => {
    let best = (scores[at] ?? 0) - (near[0] ?? 0);
    for (let k = 1; k < near.length; k += 1) {
      const nearest = Math.max(scores[at - k] ?? 0, scores[at + k] ?? 0);
      best = Math.max(best, nearest - (near[k] ?? 0));
    }
    return best;
  };

  return {
    step(evidence, unvoiced) {
      let top = Number.NEGATIVE_INFINITY;
      for (let at = margin; at < size + margin; at += 1) top = Math.max(top, scores[at] ?? 0);
      const leapt = Math.max(top, silent - start) - leap;
      const quiet = Math.max(silent, top - stop) + unvoiced;
      let best = -1;
      let highest = quiet;
      for (let i = 0; i < size; i += 1) {
        const score = Math.max(reached(i + margin), leapt) + (evidence[i] ?? 0);
        next[i + margin] = score;
        if (score > highest) {
          highest = score;
          best = i;
        }
      }
      for (let at = margin; at < size + margin; at += 1) next[at] = (next[at] ?? 0) - highest;
      silent = quiet - highest;
      [scores, next] = [next, scores];
      return best;
    },
    scores: () => scores.subarray(margin, size + margin),
    silence: () => silent,
  };
};
