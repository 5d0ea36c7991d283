import { describe, expect, it } from 'vitest';
import { createDipFinder } from '../../../src/core/signal/energy-dip';

const last = (energies: readonly number[]) => {
  const dips = createDipFinder(6);
  return energies.map((energy) => dips.add(energy)).at(-1);
};

describe('a dip of energy', () => {
  it('is the softest stretch of two hops before a rise, and counts less the longer ago it is', () => {
    const near = last([9, 9, 1, 1, 9]);
    const far = last([9, 9, 1, 1, 9, 9]);
    expect(near).toMatchObject({ back: 1, energy: 1 });
    expect(far).toMatchObject({ back: 2, energy: 1 });
    expect(far?.share).toBeLessThan(near?.share ?? 0);
  });

  it('is none where nothing rises, falls, or lies too far back, nor between two pulses', () => {
    for (const energies of [
      [2, 2, 2, 2, 2, 2],
      [9, 8, 7, 6, 5, 4],
      [1, 1, 9, 9, 9, 9, 9, 9],
      [9, 1, 9, 1, 9, 1, 9],
    ])
      expect(last(energies)).toBeNull();
  });
});
