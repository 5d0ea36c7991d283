import type { DrumRecipe } from './drum-recipe';

/**
 * Bass drums: a falling fundamental, a few modes of the head, the thud of the beater.
 * Source: frequencies, levels and lengths fitted to figures measured on the FluidR3 General MIDI sound set (MIT licence).
 */

/** Acoustic bass drum, key 35. */
export const KICK_DEEP: DrumRecipe = {
  loudness: -12.4,
  accent: 0.8,
  seconds: 0.361,
  rise: 30,
  modes: [
    [51.23, 1.4, 235, 0.69],
    [94.45, 7.6, 158, -1.36],
    [151.7, -17.6, 203, -0.53],
    [160.3, -15.7, 291, -0.51],
    [193, -18.9, 270, 2.07],
  ],
  glide: { mode: [36.89, 1.5, 344, 0.06], ratio: 2.6, settle: 37 },
  strikeT60: 8,
  noiseRise: 0.81,
  noise: [
    [63, -18.8, -32.8, 70],
    [125, -3, -10.4, 38],
    [250, -23.8, -24.8, 282],
    [500, -29.8, -36.9, 381],
    [1000, -31.6, -40.3, 577],
    [2000, -13.2, -22.9, 227],
    [4000, -10.8, -22.9, 77],
    [8000, -46.4, -35.1, 447],
  ],
  lowPass: { hz: 5700, opens: 0.25 },
  open: 1.5,
  ring: 0.15,
};

/** Key 36 of the stick kit. */
export const KICK: DrumRecipe = {
  loudness: -12.5,
  accent: 0.8,
  seconds: 0.346,
  rise: 30,
  modes: [
    [30.47, -9, 299, 3.08],
    [52.19, 3.6, 210, 0.27],
    [96.16, 11.8, 161, -1.79],
    [160.9, -16, 93, 0.43],
    [172.4, -14.3, 295, -0.57],
  ],
  glide: { mode: [41.9, 3.5, 343, -0.13], ratio: 2.32, settle: 30 },
  strikeT60: 8,
  noiseRise: 0.96,
  noise: [
    [63, -14.6, -25.7, 62],
    [125, -4.8, 4, 15],
    [250, -43.8, -30.7, 265],
    [500, -18.8, -26.1, 335],
    [1000, -34.4, -38.4, 253],
    [2000, -6.6, -22.1, 256],
    [4000, -10.4, -16.7, 71],
    [8000, -46.9, -32.7, 450],
  ],
  lowPass: { hz: 5800, opens: 0.25 },
  open: 1.5,
  ring: 0.1,
};

/** Felt beater on an open head: the bass drum of the brush kit. */
export const KICK_SOFT: DrumRecipe = {
  loudness: -8.4,
  accent: 0.6,
  seconds: 0.362,
  rise: 5.2,
  modes: [
    [91.76, -6.8, 143, 0.51],
    [126.6, -5.6, 186, -0.75],
    [158, -22.3, 148, 3.08],
    [192.1, -29.4, 161, 0.03],
    [207.7, -24, 175, 0.74],
  ],
  glide: { mode: [42.51, 0.3, 256, -0.17], ratio: 1.38, settle: 24 },
  strikeT60: 23,
  noiseRise: 0.49,
  noise: [
    [63, -7.3, -12.8, 205],
    [125, -16.2, -26.1, 151],
    [250, -18.8, -35.3, 138],
    [500, -24.8, -23.5, 108],
    [1000, -33.5, -37.5, 179],
    [2000, -24.8, -35.8, 115],
    [4000, -26.9, -37.6, 155],
    [8000, -50.2, -51, 159],
    [16000, -64.4, -77.3, 207],
  ],
  lowPass: { hz: 5600, opens: 0.2 },
  open: 1.2,
  ring: 0.1,
};
