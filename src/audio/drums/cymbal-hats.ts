import type { DrumRecipe } from './drum-recipe';

/**
 * Hi-hats: clusters of partials and noise, strongest in the top octaves.
 * Source: frequencies, levels and lengths fitted to figures measured on the FluidR3 General MIDI sound set (MIT licence).
 */

/** Key 42. */
export const HAT_CLOSED: DrumRecipe = {
  loudness: -17.7,
  seconds: 0.722,
  rise: 7.1,
  modes: [
    [4430, -2.2, 149, -1],
    [5358, -21.6, 808, 2.76],
    [7667, -10.1, 290, -2.03],
    [9631, -7.5, 231, 2.14],
    [11520, -11.9, 232, 2.05],
    [11650, -9.1, 161, -2.41],
  ],
  strikeT60: 250,
  noiseRise: 0.3,
  noise: [
    [63, -58.5, -54.6, 318],
    [125, -44.8, -46.4, 330],
    [250, -21.8, -23.1, 392],
    [500, -27.4, -28.1, 167],
    [1000, -18.2, -28.2, 418],
    [2000, -17.4, -30, 210],
    [4000, -8.1, -17.2, 337],
    [8000, -7.2, -12.6, 307],
    [16000, -2.9, 2.5, 259],
  ],
  cluster: { seed: 11, from: 300, to: 15500, count: 128, share: 0.4 },
  open: 0.9,
  ring: 0.05,
};

/** Key 44: closed by the foot, with its thud. */
export const HAT_PEDAL: DrumRecipe = {
  loudness: -17.2,
  seconds: 0.449,
  rise: 7.7,
  modes: [
    [203.1, -10.6, 181, -0.52],
    [224.3, -16.9, 381, -1.22],
    [254.1, -6, 266, -2.84],
    [300.6, -11.7, 253, 1.03],
    [9222, -11, 165, 1.87],
    [12930, -7.1, 159, -3.08],
  ],
  strikeT60: 111,
  noiseRise: 24,
  noise: [
    [63, -22.4, -46.3, 400],
    [125, -30.4, -38.5, 322],
    [250, -32.7, -29.5, 401],
    [500, -10.1, -19.6, 309],
    [1000, -8.2, -20.4, 265],
    [2000, -10.6, -25, 168],
    [4000, -2.8, -19.1, 398],
    [8000, 6.1, -24.1, 618],
    [16000, -7.2, 8.5, 188],
  ],
  cluster: { seed: 12, from: 500, to: 15500, count: 96, share: 0.05 },
  open: 0.9,
};

/** Key 46; whoever plays it must stop it with the next closed or pedal stroke. */
export const HAT_OPEN: DrumRecipe = {
  loudness: -16.1,
  accent: 0.1,
  seconds: 3.39,
  rise: 0.52,
  modes: [
    [520, -9.4, 3385, -2.57],
    [961.3, -8, 4772, -2.79],
    [1388, -13.7, 1017, 2.04],
    [2085, -8, 5269, 0.61],
    [5931, -8.4, 4039, 1.87],
    [8910, -12.3, 5828, -1.4],
  ],
  strikeT60: 154,
  noiseRise: 0.31,
  noise: [
    [63, -30.9, -31.4, 2873],
    [125, -54.7, -56.1, 1367],
    [250, -9.4, -26.9, 2628],
    [500, -12.1, -17.8, 4211],
    [1000, -14, -13.5, 5028],
    [2000, -2.1, -30.8, 3918],
    [4000, -8.3, -4.5, 4567],
    [8000, -5.3, -1, 1408],
    [16000, 8.3, -0.1, 5461],
  ],
  cluster: { seed: 13, from: 300, to: 15500, count: 160, share: 0.64 },
  damp: { after: 1900, t60: 5300 },
  open: 0.9,
};
