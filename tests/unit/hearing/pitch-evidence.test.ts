import { describe, expect, it } from 'vitest';
import { createPitchEvidence } from '../../../src/core/hearing/pitch-evidence';
import { createPitchGrid } from '../../../src/core/hearing/pitch-grid';
import { ANY_HARP } from '../../../src/core/hearing/reachable';

const RATE = 24_000;
const HOP = 128;

describe('evidence of a high reed', () => {
  const hz = 2489;
  const grid = createPitchGrid(ANY_HARP);
  const evidence = createPitchEvidence({ grid, rate: RATE, hop: HOP, longest: 10 });
  for (let n = 0; n < 20 * HOP; n += HOP) {
    const hop = Float64Array.from({ length: HOP }, (_, i) => {
      const turn = (2 * Math.PI * hz * (n + i)) / RATE;
      return 0.1 * Math.sin(turn) + 0.05 * Math.sin(2 * turn);
    });
    evidence.add(hop, { settled: false, note: false, silent: false });
  }
  const valueNear = (wanted: number): number => {
    const place = grid.frequencies.findIndex((each) => each >= wanted);
    return Math.max(evidence.values[place - 1] ?? 0, evidence.values[place] ?? 0);
  };

  // Whatever repeats after its period repeats after seven of them too.
  it.each([2, 3, 4, 5, 6, 7])('is more than that of a reed with %i times its period, by far', (times) => {
    expect(valueNear(hz) - valueNear(hz / times)).toBeGreaterThan(0.3 * Math.log2(times) + 0.5);
  });
});
