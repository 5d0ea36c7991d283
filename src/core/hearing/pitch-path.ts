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
  let scores = new Float64Array(size).fill(Number.NEGATIVE_INFINITY);
  let next = new Float64Array(size);
  let silent = 0;

  const reached = (i: number): number => {
    let best = (scores[i] ?? 0) - (moves[0] ?? 0);
    for (let k = 1; k < moves.length; k += 1) {
      if (i >= k) best = Math.max(best, (scores[i - k] ?? 0) - (moves[k] ?? 0));
      if (i + k < size) best = Math.max(best, (scores[i + k] ?? 0) - (moves[k] ?? 0));
    }
    return best;
  };

  return {
    step(evidence, unvoiced) {
      let top = Number.NEGATIVE_INFINITY;
      for (let i = 0; i < size; i += 1) top = Math.max(top, scores[i] ?? 0);
      const source = Math.max(top, silent - start);
      let best = -1;
      const quiet = Math.max(silent, top - stop) + unvoiced;
      let highest = quiet;
      for (let i = 0; i < size; i += 1) {
        next[i] = Math.max(reached(i), source - leap) + (evidence[i] ?? 0);
        if ((next[i] ?? 0) > highest) {
          highest = next[i] ?? 0;
          best = i;
        }
      }
      for (let i = 0; i < size; i += 1) next[i] = (next[i] ?? 0) - highest;
      silent = quiet - highest;
      [scores, next] = [next, scores];
      return best;
    },
    scores: () => scores,
    silence: () => silent,
  };
};
