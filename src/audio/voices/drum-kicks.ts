import type { DrumRecipe } from './drum-recipe';

/** Bass drums: a falling fundamental, a few modes of the head, the thud of the beater. Levels, lengths and frequencies fitted to figures measured on the FluidR3 General MIDI sound set (MIT licence). */

/** Acoustic bass drum, key 35. */
export const KICK_DEEP: DrumRecipe = {
  loudness: -12.4,
  seconds: 0.361,
  rise: 21,
  modes: [
    [49.83, -1, 289, 0.27],
    [91.87, 5.4, 151, -0.77],
    [150.5, -18.8, 297],
    [157.2, -15.6, 270, 0.52],
    [190.6, -18.5, 254, 1.68],
  ],
  glide: { mode: [36.58, -1.7, 320, 0.22], ratio: 2.56, settle: 32 },
  strikeT60: 17,
  noise: [
    [63, -13.7, -26.3, 74],
    [125, 7.5, -4.7, 21],
    [250, -9.3, -18.9, 209],
    [500, -12.9, -30.3, 413],
    [1000, -30.7, -37.6, 401],
    [2000, -9.9, -24.3, 268],
    [4000, -11.2, -19.1, 115],
    [8000, -28.7, -35.3, 338],
  ],
  lowPass: { hz: 6000, opens: 0.3 },
  open: 0,
};

/** Key 36 of the stick kit. */
export const KICK: DrumRecipe = {
  loudness: -12.5,
  seconds: 0.346,
  rise: 30,
  modes: [
    [29.59, -28.5, 431, -1.43],
    [52.8, -6.8, 310, 0.26],
    [97.48, 9.3, 140, -2.16],
    [159.7, -15.7, 139],
    [170.7, -10.2, 281, -0.1],
  ],
  glide: { mode: [42.63, 1.1, 354, -0.34], ratio: 2.26, settle: 33 },
  strikeT60: 15,
  noise: [
    [63, -12.5, -36, 56],
    [125, 4.6, 7.7, 21],
    [250, -13.6, -14.2, 218],
    [500, -25.2, -30.6, 400],
    [1000, -27.9, -36.8, 190],
    [2000, -20.2, -18.2, 258],
    [4000, -12, -13.1, 126],
    [8000, -47.1, -34.2, 378],
  ],
  lowPass: { hz: 6200, opens: 0.3 },
  open: 0,
};

/** Felt beater on an open head: the bass drum of the brush kit. */
export const KICK_SOFT: DrumRecipe = {
  loudness: -8.4,
  seconds: 0.362,
  rise: 3.5,
  modes: [
    [91.66, -11.2, 113, 0.19],
    [126.5, -6.7, 177, -0.2],
    [158, -23.6, 128, 2.09],
    [192.1, -27.3, 160, -0.58],
    [207.7, -25, 144, 0.2],
  ],
  glide: { mode: [43.11, -1.5, 276], ratio: 1.21, settle: 36 },
  strikeT60: 24,
  noise: [
    [63, -4.6, -13.1, 210],
    [125, -16.1, -24.6, 166],
    [250, -21.6, -34.8, 135],
    [500, -20.6, -25.3, 101],
    [1000, -29.5, -35.9, 160],
    [2000, -25.1, -33.9, 109],
    [4000, -29.2, -39.2, 148],
    [8000, -50, -50.3, 162],
    [16000, -64.4, -78, 218],
  ],
  lowPass: { hz: 4800, opens: 0.3 },
  open: 0,
};
