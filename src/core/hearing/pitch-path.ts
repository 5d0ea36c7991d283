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
  // Room beside the grid, so that nobody has to ask where it ends.
  const margin = near.length;
  const row = (): Float64Array => new Float64Array(size + 2 * margin).fill(Number.NEGATIVE_INFINITY);
  let scores = row();
  let next = row();
  let top = Number.NEGATIVE_INFINITY;
  let silent = 0;

  /** Writes how good the best way to each pitch is, before what the latest window says of it. */
  const reach = (from: Float64Array, into: Float64Array, leapt: number): void => {
    into.fill(leapt);
    for (let at = margin; at < size + margin; at += 1) {
      const score = from[at] ?? 0;
      // Nobody moves along from where a leap from the best is better: while a note stands, that is nearly everywhere.
      if (score <= leapt) continue;
      for (let k = 0; k < margin; k += 1) {
        const moved = score - (near[k] ?? 0);
        if (moved > (into[at - k] ?? 0)) into[at - k] = moved;
        if (moved > (into[at + k] ?? 0)) into[at + k] = moved;
      }
    }
  };

  return {
    step(evidence, unvoiced) {
      const now = next;
      const leapt = Math.max(top, silent - start) - leap;
      const quiet = Math.max(silent, top - stop) + unvoiced;
      reach(scores, now, leapt);
      let best = -1;
      let most = Number.NEGATIVE_INFINITY;
      for (let i = 0; i < size; i += 1) {
        const score = (now[i + margin] ?? 0) + (evidence[i] ?? 0);
        now[i + margin] = score;
        if (score > most) {
          most = score;
          best = i;
        }
      }
      const highest = Math.max(most, quiet);
      for (let at = margin; at < size + margin; at += 1) now[at] = (now[at] ?? 0) - highest;
      top = most - highest;
      silent = quiet - highest;
      next = scores;
      scores = now;
      return most > quiet ? best : -1;
    },
    scores: () => scores.subarray(margin, size + margin),
    silence: () => silent,
  };
};
