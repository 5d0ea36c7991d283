import type { FeelId } from '../../core/feels/feels';

/**
 * Gain in dB that brings each feel to −18 LUFS integrated (BS.1770-4) with every fader at rest. Measured at 48 kHz on
 * renderings of the twelve-bar form with turnaround in G, usual tempo and instruments, seed 1, no count-in: the mean of
 * one steady chorus and of six breathing ones. Single choruses of the breathing plan lie 3 LU below to 3 LU above.
 * `tests/browser/offline.test.ts` measures the steady chorus again.
 */
export const FEEL_TRIMS: Readonly<Record<FeelId, number>> = {
  shuffle: -0.1,
  'slow-12-8': 0,
  swing: 0.2,
  straight: -0.4,
  'double-shuffle': -0.9,
  jump: -2,
  boogie: -1.3,
  rhumba: 0.1,
  'second-line': -0.8,
  train: -0.9,
  rock: -0.9,
  'minor-slow': 0,
};
