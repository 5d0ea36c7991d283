import type { FeelId } from '../../core/feels/feels';

/**
 * Gain in dB that brings each feel to −18 LUFS integrated (BS.1770-4) with every fader at rest. Measured at 48 kHz on
 * renderings of the twelve-bar form with turnaround in G, usual tempo and instruments, seed 1 (1 and 2 for the two
 * shuffles), no count-in: the mean of one steady chorus on computed voices and of one on the recorded instruments, which
 * lie within 0.8 LU of each other. `tests/reference/band-file.test.ts` measures the steady chorus again.
 */
export const FEEL_TRIMS: Readonly<Record<FeelId, number>> = {
  shuffle: -0.7,
  'slow-12-8': -0.3,
  swing: -0.1,
  straight: -0.9,
  'double-shuffle': -2.1,
  jump: -2.6,
  boogie: -1.7,
  rhumba: -0.2,
  'second-line': -1.5,
  train: 0,
  rock: -2.7,
  'minor-slow': -0.3,
  'slow-drag': 0.5,
  'funk-blues': -0.4,
};
