import { describe, expect, it } from 'vitest';
import { wandering } from '../../../src/core/players/wander';

const BEATS = Array.from({ length: 400 }, (_, beat) => beat);

describe('a hand that wanders', () => {
  it.each([1, 7, 2026])('goes slowly both ways, and never beyond its bounds (seed %i)', (seed) => {
    const way = BEATS.map(wandering(seed, 'hat'));
    expect(Math.max(...way)).toBeGreaterThan(0.5);
    expect(Math.max(...way)).toBeLessThanOrEqual(1);
    expect(Math.min(...way)).toBeLessThan(-0.5);
    expect(Math.min(...way)).toBeGreaterThanOrEqual(-1);
    // Correlated from stroke to stroke, which noise is not (doi 10.1371/journal.pone.0186361).
    const steps = way.slice(1).map((here, i) => Math.abs(here - (way[i] ?? 0)));
    expect(Math.max(...steps)).toBeLessThan(0.45);
  });

  it('has a way of its own for every seed and name', () => {
    const far = (a: (beat: number) => number, b: (beat: number) => number): number =>
      Math.max(...BEATS.map((beat) => Math.abs(a(beat) - b(beat))));
    expect(far(wandering(1, 'hat'), wandering(1, 'snare'))).toBeGreaterThan(0.3);
    expect(far(wandering(1, 'hat'), wandering(2, 'hat'))).toBeGreaterThan(0.3);
    expect(far(wandering(1, 'hat'), wandering(1, 'hat'))).toBe(0);
  });
});
