import type { DrumRecipe } from './drum-recipe';

/** Strokes of wire brushes on the snare. Levels, lengths and frequencies fitted to figures measured on the FluidR3 General MIDI sound set (MIT licence). */

/** A light tap. */
export const BRUSH_TAP: DrumRecipe = {
  loudness: -16.9,
  seconds: 0.386,
  rise: 3.4,
  modes: [
    [191, -9.7, 309],
    [205, -4.9, 317],
    [218, -3.6, 291],
    [236, -7.9, 288],
    [296, -3, 218],
    [508, -9.4, 198],
  ],
  strikeT60: 60,
  noise: [
    [63, -35.5, -41.5, 268],
    [125, -12.5, -18.5, 246],
    [250, -13.1, -19.1, 246],
    [500, -17.4, -23.4, 303],
    [1000, -13.2, -19.2, 289],
    [2000, -12.9, -18.9, 266],
    [4000, -8.3, -14.3, 268],
    [8000, -15.7, -21.7, 285],
    [16000, -31.2, -37.2, 268],
  ],
  lowPass: { hz: 11000, opens: 0.3 },
  open: 0,
};

/** The flat brush thrown on the head. */
export const BRUSH_SLAP: DrumRecipe = {
  loudness: -14.7,
  seconds: 0.472,
  rise: 4.6,
  modes: [
    [130, -15.4, 264],
    [166, -3, 223],
    [216, -15.2, 484],
    [277, -8.4, 153],
    [469, -9.7, 438],
    [1008, -14.4, 150],
  ],
  strikeT60: 60,
  noise: [
    [63, -23.4, -29.4, 192],
    [125, -14.1, -20.1, 240],
    [250, -16.2, -22.2, 281],
    [500, -21.9, -27.9, 405],
    [1000, -22.7, -28.7, 369],
    [2000, -11.7, -17.7, 378],
    [4000, -8.7, -14.7, 318],
    [8000, -13.5, -19.5, 289],
    [16000, -40.5, -46.5, 318],
  ],
  lowPass: { hz: 8500, opens: 0.3 },
  open: 0,
};

/** A stroke round the head: noise with hardly any pitch. */
export const BRUSH_SWIRL: DrumRecipe = {
  loudness: -18.5,
  seconds: 0.667,
  rise: 6.7,
  modes: [
    [136, -6.2, 233],
    [302, -7.3, 597],
    [595, -3, 763],
    [632, -3.7, 838],
    [924, -5.5, 752],
    [2110, -6.8, 441],
  ],
  strikeT60: 60,
  noise: [
    [63, -21.6, -27.6, 700],
    [125, -25.1, -31.1, 369],
    [250, -24.7, -30.7, 664],
    [500, -16.8, -22.8, 799],
    [1000, -20.1, -26.1, 773],
    [2000, -15.9, -21.9, 799],
    [4000, -5.6, -11.6, 756],
    [8000, -12.2, -18.2, 797],
    [16000, -32.3, -38.3, 756],
  ],
  lowPass: { hz: 10000, opens: 0.3 },
  open: 0,
};
