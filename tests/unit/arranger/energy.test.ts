import { describe, expect, it } from 'vitest';
import { barEnergies, breathingEnergy, type Dynamics } from '../../../src/core/arranger/energy';
import { buildChart } from '../../../src/core/chart/build-chart';
import { phrasesOf } from '../../../src/core/chart/phrases';
import { asPitchClass } from '../../../src/core/theory/units';

/** Three phrases of four bars. */
const PHRASES = phrasesOf(buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' }).bars);

/** How far the last phrase lies above the first, without what chance adds. */
const rise = (dynamics: Dynamics): number => {
  const bars = barEnergies(() => 0.5, 0.5, PHRASES, dynamics);
  return (bars[11] ?? 0) - (bars[3] ?? 0);
};

describe('the energy of a chorus', () => {
  // Figures by design: there is no source for them, but players must hear the three apart.
  it('hardly grows where it is calm, somewhat where it is lively, and much where it builds', () => {
    expect(rise('calm')).toBeGreaterThan(0);
    expect(rise('lively')).toBeGreaterThan(2 * rise('calm'));
    expect(rise('building')).toBeGreaterThan(3 * rise('lively'));
    expect(rise('building')).toBeLessThan(0.3);
  });

  it('breathes between sparse and full for as long as it is played, and never stands still', () => {
    for (const seed of [1, 5, 9]) {
      const energies = Array.from({ length: 60 }, (_, chorus) => breathingEnergy(seed, chorus));
      const levels = energies.filter((energy) => energy !== 'break');
      expect(Math.min(...levels)).toBeLessThan(0.5);
      expect(Math.max(...levels)).toBeGreaterThan(0.8);
      expect(new Set(levels).size).toBeGreaterThan(levels.length - 3);
      expect(energies.length - levels.length).toBeGreaterThanOrEqual(4);
    }
  });
});
