import type { DrumRecipe } from './drum-recipe';

/** Congas and bongos. Levels, lengths and frequencies fitted to figures measured on the FluidR3 General MIDI sound set (MIT licence). */

/** Key 62: the slap on a damped head. */
export const CONGA_MUTE: DrumRecipe = {
  loudness: -14.9,
  seconds: 0.3,
  rise: 0.51,
  modes: [
    [585, -16.8, 345],
    [749, -11.6, 152],
    [802, -4.3, 135],
    [884, -3, 169],
    [1002, -13.5, 258],
    [1141, -8.4, 259],
  ],
  strikeT60: 60,
  noise: [
    [63, -27, -33, 525],
    [125, -26.8, -32.8, 276],
    [250, -24, -30, 260],
    [500, -13.3, -19.3, 306],
    [1000, -10.6, -16.6, 220],
    [2000, -12.8, -18.8, 196],
    [4000, -20.3, -26.3, 221],
    [8000, -22.6, -28.6, 205],
    [16000, -26.6, -32.6, 206],
  ],
  open: 0,
};

/** Key 63. */
export const CONGA_HIGH: DrumRecipe = {
  loudness: -9.6,
  seconds: 0.751,
  rise: 1.3,
  modes: [
    [255, -21.9, 581],
    [292, -3, 588],
    [353, -20.2, 566],
    [536, -17.6, 597],
    [727, -21.7, 442],
    [797, -14.1, 229],
  ],
  strikeT60: 60,
  noise: [
    [63, -31.9, -37.9, 287],
    [125, -26.5, -32.5, 344],
    [250, -11.1, -17.1, 593],
    [500, -12.3, -18.3, 586],
    [1000, -18.2, -24.2, 287],
    [2000, -24.5, -30.5, 139],
    [4000, -23.7, -29.7, 128],
    [8000, -29.1, -35.1, 182],
    [16000, -37.9, -43.9, 287],
  ],
  open: 0,
};

/** Key 64. */
export const CONGA_LOW: DrumRecipe = {
  loudness: -7.8,
  seconds: 0.636,
  rise: 4.3,
  modes: [
    [194, -23, 603],
    [212, -8.8, 602],
    [241, -20.3, 567],
    [259, -3, 569],
    [404, -21.7, 931],
    [552, -25.6, 667],
  ],
  strikeT60: 60,
  noise: [
    [63, -44.9, -50.9, 382],
    [125, -22.9, -28.9, 382],
    [250, -10.2, -16.2, 585],
    [500, -17.3, -23.3, 838],
    [1000, -20.9, -26.9, 370],
    [2000, -26.8, -32.8, 290],
    [4000, -31, -37, 382],
    [8000, -31.6, -37.6, 382],
    [16000, -50.3, -56.3, 382],
  ],
  open: 0,
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
