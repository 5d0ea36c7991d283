import type { DrumRecipe } from './drum-recipe';

/**
 * Sticks and blocks of wood.
 * Source: frequencies, levels and lengths fitted to figures measured on the FluidR3 General MIDI sound set (MIT licence).
 */

/** Key 75. */
export const CLAVES: DrumRecipe = {
  loudness: -8.6,
  seconds: 0.166,
  rise: 0.24,
  modes: [
    [1819, -32.6, 35, -2.92],
    [2023, -21.8, 64, 0.94],
    [2150, 9.8, 61, -0.03],
    [2276, -10.8, 60, 3.1],
    [2454, -18.1, 43, 3.08],
    [2595, -25.7, 100, -1.38],
  ],
  strikeT60: 19,
  noiseRise: 0.3,
  noise: [
    [125, -50.2, -55.1, 62],
    [250, -49.7, -46.2, 48],
    [500, -63.3, -58.9, 76],
    [1000, -49.5, -44.5, 29],
    [2000, -33.7, -34.9, 296],
    [4000, -45.6, -41.4, 178],
    [8000, -16, -31.5, 18],
    [16000, -33.9, -42.3, 70],
  ],
  open: 0.8,
};

/** A hollow block: one mode of the cavity, one of the plate, dry. */
const woodBlock = (hz: number, t60: number): DrumRecipe => ({
  loudness: -10.5,
  seconds: 0.16,
  rise: 0.4,
  modes: [
    [hz, 0, t60],
    [hz * 1.46, -11, t60 * 0.6],
    [hz * 2.57, -17, t60 * 0.4],
    [hz * 3.9, -24, t60 * 0.3],
  ],
  strikeT60: 14,
  noise: [
    [500, -22, -60, 60],
    [1000, -16, -52, 60],
    [2000, -16, -52, 50],
    [4000, -20, -58, 40],
    [8000, -28, -66, 30],
  ],
  open: 0.8,
});

export const WOOD_BLOCK_HIGH = woodBlock(1240, 85);
export const WOOD_BLOCK_LOW = woodBlock(830, 95);
