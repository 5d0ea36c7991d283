import type { DrumRecipe } from './drum-recipe';

/** Sticks and blocks of wood. Levels, lengths and frequencies fitted to figures measured on the FluidR3 General MIDI sound set (MIT licence). */

/** Key 75. */
export const CLAVES: DrumRecipe = {
  loudness: -8.6,
  seconds: 0.166,
  rise: 0.32,
  modes: [
    [1854, -27.5, 38],
    [1971, -22.8, 33],
    [2159, -3, 57],
    [2296, -20, 52],
    [2442, -25.2, 30],
    [2596, -30.3, 165],
  ],
  strikeT60: 60,
  noise: [
    [63, -57.8, -63.8, 68],
    [125, -51.9, -57.9, 68],
    [250, -47.1, -53.1, 68],
    [500, -50.7, -56.7, 68],
    [1000, -35.3, -41.3, 68],
    [2000, -10, -16, 64],
    [4000, -24.1, -30.1, 218],
    [8000, -24.8, -30.8, 68],
    [16000, -37, -43, 68],
  ],
  open: 0,
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
