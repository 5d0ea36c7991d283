/** Draws numbers in [0, 1); the same seed gives the same sequence. */
export type Random = () => number;

const STEP = 0x6d2b79f5;

/** Two multiply-xorshift rounds of a state: a number in [0, 1). */
const mixed = (state: number): number => {
  let z = Math.imul(state ^ (state >>> 15), state | 1);
  z ^= z + Math.imul(z ^ (z >>> 7), z | 61);
  return ((z ^ (z >>> 14)) >>> 0) / 4294967296;
};

/**
 * A seeded generator (mulberry32: a 32-bit counter through two multiply-xorshift rounds).
 * @param seed any whole number; only its low 32 bits count.
 */
export const createRandom = (seed: number): Random => {
  let state = seed | 0;
  return () => {
    state = (state + STEP) | 0;
    return mixed(state);
  };
};

/** Fills an array with the numbers that are drawn next. */
export type Draws = (out: Float64Array) => void;

/** The same numbers, many at a time, at half of what as many calls cost: the state stays at hand between them. */
export const createDraws = (seed: number): Draws => {
  let last = seed | 0;
  return (out) => {
    let state = last;
    for (let i = 0; i < out.length; i += 1) {
      state = (state + STEP) | 0;
      out[i] = mixed(state);
    }
    last = state;
  };
};

/** Derives a new seed from a seed and any number of labels, so that parts and choruses vary independently. */
export const seedFrom = (seed: number, ...labels: readonly (string | number)[]): number => {
  let hash = (seed ^ 0x811c9dc5) >>> 0;
  for (const character of labels.join('/')) {
    hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  }
  return hash;
};

/** One item of a list, each as likely as the others. Throws RangeError on an empty list. */
export const pick = <T>(random: Random, items: readonly T[]): T => {
  const item = items[Math.floor(random() * items.length)];
  if (item === undefined) throw new RangeError('pick needs at least one item');
  return item;
};
