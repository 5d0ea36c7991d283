/** Hops looked back over for a rise: 32 ms. */
const HOPS = 6;
/** A band has risen that is so many times as strong as it was, and has not that is less: 6 dB and 2 dB. */
const RISE = { upper: 4, low: 1.6 } as const;
/** Hops for which a room may keep what was before: 130 ms. */
const LASTS = 25;

/** Takes the powers of the low, middle and high band of each hop; tells whether something began above of late. */
export type UpperRise = (low: number, middle: number, high: number) => boolean;

/**
 * Notices when something begins that is in the bands above the lowest only: a reed there, beside what a room keeps of a
 * lower one.
 */
export const createUpperRise = (): UpperRise => {
  const pasts = [new Float64Array(HOPS), new Float64Array(HOPS), new Float64Array(HOPS)] as const;
  let next = 0;
  let left = 0;
  const riseOf = (past: Float64Array, power: number): number => {
    let least = power;
    for (let i = 0; i < HOPS; i += 1) least = Math.min(least, past[i] ?? 0);
    past[next] = power;
    return power / (least + Number.MIN_VALUE);
  };
  return (low, middle, high) => {
    const lowRise = riseOf(pasts[0], low);
    const rise = Math.max(riseOf(pasts[1], middle), riseOf(pasts[2], high));
    next = (next + 1) % HOPS;
    left = rise >= RISE.upper && lowRise < RISE.low ? LASTS : Math.max(0, left - 1);
    return left > 0;
  };
};
