import type { FeelId } from '../../core/feels/feels';

/**
 * Gain in dB that brings each feel to −18 LUFS integrated (BS.1770-4) with every fader at rest. Measured at 48 kHz on
 * renderings of the twelve-bar form with turnaround in G, usual tempo and instruments: the mean of one steady chorus on
 * computed voices (seed 1, no count-in) and of four choruses on the recorded instruments, which lie within 0.6 LU of each
 * other. `tests/reference/band-file.test.ts` measures the steady chorus again.
 */
export const FEEL_TRIMS: Readonly<Record<FeelId, number>> = {
  shuffle: -1.4,
  'slow-12-8': -0.6,
  swing: -1.1,
  straight: -2.1,
  'double-shuffle': -2.1,
  jump: -3.2,
  boogie: -2.6,
  rhumba: -0.4,
  'second-line': -1.5,
  train: -1.5,
  rock: -2.4,
  'minor-slow': -2.4,
  'slow-drag': -0.2,
  'funk-blues': -0.9,
};
