import type { DrumRecipe } from './drum-recipe';

/**
 * Congas and bongos.
 * Source: frequencies, levels and lengths fitted to figures measured on the FluidR3 General MIDI sound set (MIT licence).
 */

/** Key 62: the slap on a damped head. */
export const CONGA_MUTE: DrumRecipe = {
  loudness: -14.9,
  accent: 0.1,
  seconds: 0.3,
  rise: 0.72,
  modes: [
    [584, -16.6, 300, -0.88],
    [752.5, -12.2, 160, 0.97],
    [804.6, -1.5, 142, -0.41],
    [886.2, 0, 180, 0.22],
    [991.9, -15.7, 238, -0.29],
    [1142, -5.1, 234, 1.04],
  ],
  strikeT60: 52,
  noiseRise: 0.38,
  noise: [
    [63, -18.6, -34.5, 435],
    [125, -28, -28.5, 246],
    [250, -23.4, -29.8, 247],
    [500, -14.1, -22.6, 253],
    [1000, -9, -14.1, 213],
    [2000, -11.9, -20.1, 197],
    [4000, -22.6, -30.9, 288],
    [8000, -19, -36.3, 238],
    [16000, -23.2, -32.3, 232],
  ],
  open: 1.2,
};

/** Key 63. */
export const CONGA_HIGH: DrumRecipe = {
  loudness: -9.6,
  seconds: 0.751,
  rise: 1.4,
  modes: [
    [255.8, -20.9, 452, -1.18],
    [290.8, -1.9, 579, 0.18],
    [346.8, -23.4, 894, 2.07],
    [544.6, -16.8, 606, -0.63],
    [723.8, -13.9, 399, -1.26],
    [789.6, -6.3, 217, 2.71],
  ],
  strikeT60: 13,
  noiseRise: 0.3,
  noise: [
    [63, -25.7, -32.5, 271],
    [125, -33.8, -36.6, 306],
    [250, -34.7, -21.5, 371],
    [500, -14.6, -22.3, 303],
    [1000, -18.6, -18, 126],
    [2000, -29.5, -26.2, 133],
    [4000, -14.6, -28.2, 114],
    [8000, -27.8, -45.1, 165],
    [16000, -30.5, -43.1, 334],
  ],
  open: 1.5,
};

/** Key 64. */
export const CONGA_LOW: DrumRecipe = {
  loudness: -7.8,
  seconds: 0.636,
  rise: 6.8,
  modes: [
    [192, -25.3, 521, 0.08],
    [212, -5.2, 560, 0.89],
    [240.2, -24.1, 550, 0.05],
    [258.7, 0.9, 511, -0.76],
    [417.6, -27.1, 808, -1.9],
    [550.2, -20.8, 785, 2],
  ],
  strikeT60: 21,
  noiseRise: 0.43,
  noise: [
    [63, -49.1, -58.1, 366],
    [125, -35.6, -44.7, 381],
    [250, -18.2, -26, 437],
    [500, -6.7, -33.2, 282],
    [1000, -20, -21.8, 321],
    [2000, -30.6, -37.9, 259],
    [4000, -19.2, -43, 291],
    [8000, -24.2, -52.6, 470],
    [16000, -45.2, -55.9, 454],
  ],
  open: 1.5,
  ring: 0.05,
};

/** The same drum smaller: all modes higher by a ratio and shorter by its square root. By design. */
const smaller = (drum: DrumRecipe, ratio: number): DrumRecipe => ({
  ...drum,
  seconds: drum.seconds / Math.sqrt(ratio),
  modes: drum.modes.map(([hz, level, t60, phase = 0]) => [hz * ratio, level, t60 / Math.sqrt(ratio), phase]),
});

/** Keys 60 and 61. */
export const BONGO_HIGH = smaller(CONGA_HIGH, 1.5);
export const BONGO_LOW = smaller(CONGA_HIGH, 1.15);
