import type { DrumRecipe } from './drum-recipe';

/**
 * Strokes of wire brushes on the snare.
 * Source: frequencies, levels and lengths fitted to figures measured on the FluidR3 General MIDI sound set (MIT licence).
 */

/** A light tap. */
export const BRUSH_TAP: DrumRecipe = {
  loudness: -16.9,
  accent: 1.7,
  seconds: 0.386,
  rise: 4.8,
  modes: [
    [190.8, -9.6, 354, -0.07],
    [206.3, -6.5, 294, -0.1],
    [219.7, -3.9, 276],
    [235.7, -9.3, 283, 0.17],
    [295.9, -0.9, 235, 0.39],
    [506.1, -6.9, 205, 0.03],
  ],
  strikeT60: 69,
  noiseRise: 5.7,
  noise: [
    [63, -34.3, -39.7, 255],
    [125, -15.5, -19.5, 235],
    [250, -19.2, -19.5, 228],
    [500, -17.7, -18.4, 385],
    [1000, -12.5, -17.1, 272],
    [2000, -14, -18.9, 294],
    [4000, -7.4, -10.6, 279],
    [8000, -16.3, -21.3, 286],
    [16000, -30.4, -36.2, 272],
  ],
  lowPass: { hz: 12000, opens: 0.15 },
  open: 1,
  ring: 0.05,
};

/** The flat brush thrown on the head. */
export const BRUSH_SLAP: DrumRecipe = {
  loudness: -14.7,
  accent: 1.2,
  seconds: 0.472,
  rise: 3.6,
  modes: [
    [128.3, -15.1, 199, 0.71],
    [165.9, -2.5, 225, -0.82],
    [211, -17.8, 437, 1.59],
    [277, -3.6, 149, -0.22],
    [470.3, -14.3, 469, 0.03],
    [1024, -7.7, 130, -0.42],
  ],
  strikeT60: 42,
  noiseRise: 3.8,
  noise: [
    [63, -30.2, -34, 194],
    [125, -20.1, -24.2, 206],
    [250, -17.7, -29.8, 212],
    [500, -19.7, -35.3, 406],
    [1000, -22.5, -28.9, 502],
    [2000, -10.2, -19.4, 430],
    [4000, -11.7, -11, 295],
    [8000, -20.5, -17.2, 337],
    [16000, -44.4, -49.7, 443],
  ],
  lowPass: { hz: 8600, opens: 0.15 },
  open: 1,
  ring: 0.1,
};

/** A stroke round the head: noise with hardly any pitch. */
export const BRUSH_SWIRL: DrumRecipe = {
  loudness: -18.5,
  accent: 1.2,
  seconds: 0.667,
  rise: 5.1,
  modes: [
    [135, 1.3, 244, 0.41],
    [315.2, -9.3, 679, 0.03],
    [601.1, -4.1, 734, 0.86],
    [645.7, -6.9, 841, 2.35],
    [914.7, -7.1, 757, 2.57],
    [2115, -3.9, 344, 1.69],
  ],
  strikeT60: 62,
  noiseRise: 11,
  noise: [
    [63, -0.3, -20.7, 801],
    [125, -24.8, -43, 245],
    [250, -11, -20.2, 717],
    [500, -5.3, -5.6, 688],
    [1000, -11.1, -11, 780],
    [2000, -14, -1.5, 770],
    [4000, 0, -2.4, 729],
    [8000, -5.1, -28.1, 508],
    [16000, -32.2, -37.6, 728],
  ],
  lowPass: { hz: 12000, opens: 0.15 },
  open: 1,
  ring: 0.25,
};
