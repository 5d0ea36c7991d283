import type { FeelId } from '../../core/feels/feels';

/**
 * Gain in dB that brings each feel to −18 LUFS integrated (BS.1770-4) with every fader at rest. Measured at 48 kHz on
 * renderings of the twelve-bar form with turnaround in G, usual tempo and instruments: the mean of one steady chorus on
 * computed voices (seed 1, no count-in) and of four choruses on the recorded instruments, which lie within 1.2 LU of each
 * other. `tests/reference/band-file.test.ts` measures the steady chorus again.
 */
export const FEEL_TRIMS: Readonly<Record<FeelId, number>> = {
  shuffle: -0.7,
  'slow-12-8': -0.7,
  swing: -0.1,
  straight: -0.9,
  'double-shuffle': -1.7,
  jump: -2.4,
  boogie: -2,
  rhumba: -0.6,
  'second-line': -1.9,
  train: -0.6,
  rock: -1.8,
  'minor-slow': -1,
  'slow-drag': 0.1,
  'funk-blues': -0.8,
};
