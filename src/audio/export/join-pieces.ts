/** Adds up pieces of some channels that overlap by their tails. */
export interface PieceJoin {
  /**
   * What is complete of each channel once a piece that begins so many frames before the next has been added. The piece is
   * at least that long, and is used up.
   */
  add(piece: readonly Float32Array[], frames: number): readonly Float32Array[];
  /** What is left of each channel. */
  rest(): readonly Float32Array[];
}

/** The longer of the two with the other added to it. */
const added = (one: Float32Array, other: Float32Array): Float32Array => {
  const [sum, less] = one.length < other.length ? [other, one] : [one, other];
  for (let at = 0; at < less.length; at += 1) sum[at] = (sum[at] ?? 0) + (less[at] ?? 0);
  return sum;
};

/** Starts with nothing; pieces are added in the order they sound. */
export const createPieceJoin = (): PieceJoin => {
  let tails: readonly Float32Array[] = [];
  return {
    add: (piece, frames) => {
      const sums = piece.map((channel, i) => added(channel, tails[i] ?? new Float32Array(0)));
      tails = sums.map((sum) => sum.slice(frames));
      return sums.map((sum) => sum.subarray(0, frames));
    },
    rest: () => tails,
  };
};
