import { expect, it } from 'vitest';
import { attackTime } from '../../../src/core/hearing/attack';

/** Levels every 4 ms that jump by 40 dB at a time. */
const jumpAt = (at: number) =>
  Array.from({ length: 50 }, (_, i) => ({ time: i * 0.004, level: i * 0.004 < at ? -70 : -30 }));

it('finds the rise before the first voiced frame', () => {
  expect(attackTime(jumpAt(0.1), 0.11)).toBeCloseTo(0.096, 2);
});

it('finds no attack where all levels are too old to tell, or there are none', () => {
  expect(attackTime(jumpAt(0.1), 1)).toBeNull();
  expect(attackTime([], 0)).toBeNull();
});
