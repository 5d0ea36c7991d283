/** Draws numbers in [0, 1); the same seed gives the same sequence. */
export type Random = () => number;

/**
 * A seeded generator (mulberry32: a 32-bit counter through two multiply-xorshift rounds).
 * @param seed any whole number; only its low 32 bits count.
 */
export const createRandom = (seed: number): Random => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let z = state;
    z = Math.imul(z ^ (z >>> 15), z | 1);
    z ^= z + Math.imul(z ^ (z >>> 7), z | 61);
    return ((z ^ (z >>> 14)) >>> 0) / 4294967296;
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
