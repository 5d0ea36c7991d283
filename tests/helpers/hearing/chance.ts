import type { Random } from '../../../src/core/theory/random';

/** A number between two bounds, each as likely. */
export const between = (random: Random, low: number, high: number): number => low + (high - low) * random();

/** A number between two bounds above 0, each ratio as likely. */
export const betweenRatios = (random: Random, low: number, high: number): number =>
  low * (high / low) ** random();

/** True in so many cases of one. */
export const happens = (random: Random, share: number): boolean => random() < share;

/** A normal deviate of unit spread (the sum of twelve uniform ones). */
export const normal = (random: Random): number => {
  let sum = -6;
  for (let i = 0; i < 12; i += 1) sum += random();
  return sum;
};

/** One of several, by weight. Throws RangeError on an empty list. */
export const weighted = <T>(random: Random, items: readonly (readonly [item: T, weight: number])[]): T => {
  let left = random() * items.reduce((sum, [, weight]) => sum + weight, 0);
  for (const [item, weight] of items) {
    left -= weight;
    if (left <= 0) return item;
  }
  const last = items.at(-1);
  if (last === undefined) throw new RangeError('weighted needs at least one item');
  return last[0];
};

/** Amplitude of a level in dB. */
export const amplitude = (decibels: number): number => 10 ** (decibels / 20);

/** A frequency ratio of cents. */
export const ratio = (cents: number): number => 2 ** (cents / 1200);
