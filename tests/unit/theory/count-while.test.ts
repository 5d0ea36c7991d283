import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countWhile } from '../../../src/core/theory/count-while';
import { soakRuns } from '../../helpers/soak';

describe('counting while something holds', () => {
  it('is what going through the row from its beginning gives', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -20, max: 20 })),
        fc.integer({ min: -22, max: 22 }),
        (row, bound) => {
          const sorted = row.toSorted((a, b) => a - b);
          const counted = countWhile(sorted.length, (i) => (sorted[i] ?? 0) <= bound);
          expect(counted).toBe(sorted.filter((each) => each <= bound).length);
        },
      ),
      { numRuns: soakRuns(1) },
    );
  });
});
