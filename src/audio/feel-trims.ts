import type { FeelId } from '../core/score/style';

/**
 * Gain in dB that brings each feel to −18 LUFS integrated (BS.1770-4) with every fader at rest. Measured by rendering one
 * chorus of the twelve-bar form with turnaround in G at the usual tempo with the usual instruments (seed 1, no count-in)
 * at 48 kHz; `tests/browser/offline.test.ts` measures it again.
 */
export const FEEL_TRIMS: Readonly<Record<FeelId, number>> = {
  shuffle: 3.4,
  'slow-12-8': 3.5,
  swing: 3.6,
  straight: 1.5,
  'double-shuffle': 2.7,
  jump: 2.4,
  boogie: 1.8,
  rhumba: 2.4,
  'second-line': 2.1,
  train: 4.5,
  rock: 2.0,
  'minor-slow': 3.4,
};
