import type { DrumRecipe } from './drum-recipe';

/** Hi-hats: clusters of partials and noise, strongest in the top octaves. Levels, lengths and frequencies fitted to figures measured on the FluidR3 General MIDI sound set (MIT licence). */

/** Key 42. */
export const HAT_CLOSED: DrumRecipe = {
  loudness: -17.7,
  seconds: 0.722,
  rise: 1.2,
  modes: [
    [4425, -3, 162],
    [5424, -8.7, 444],
    [7937, -8.9, 345],
    [9416, -5.6, 230],
    [11130, -6.8, 234],
    [12330, -8, 236],
  ],
  strikeT60: 60,
  noise: [
    [63, -50.2, -56.2, 278],
    [125, -35.2, -41.2, 278],
    [250, -19.7, -25.7, 337],
    [500, -22.7, -28.7, 272],
    [1000, -20.4, -26.4, 311],
    [2000, -18.1, -24.1, 278],
    [4000, -18.4, -24.4, 303],
    [8000, -16.4, -22.4, 269],
    [16000, -12.4, -18.4, 217],
  ],
  cluster: { seed: 11, from: 300, to: 15500, count: 128, share: 0.5 },
  open: 0,
};

/** Key 44: closed by the foot, with its thud. */
export const HAT_PEDAL: DrumRecipe = {
  loudness: -17.2,
  seconds: 0.449,
  rise: 10,
  modes: [
    [202, -9, 314],
    [227, -8.4, 335],
    [254, -3, 299],
    [300, -7.3, 292],
    [9407, -10.5, 272],
    [12640, -10.3, 173],
  ],
  strikeT60: 60,
  noise: [
    [63, -34.4, -40.4, 278],
    [125, -25.6, -31.6, 303],
    [250, -19.4, -25.4, 288],
    [500, -18.7, -24.7, 278],
    [1000, -18, -24, 252],
    [2000, -17.6, -23.6, 242],
    [4000, -12.4, -18.4, 346],
    [8000, -17.5, -23.5, 254],
    [16000, -12.2, -18.2, 168],
  ],
  cluster: { seed: 12, from: 500, to: 15500, count: 96, share: 0.5 },
  open: 0,
};

/** Key 46; whoever plays it must stop it with the next closed or pedal stroke. */
export const HAT_OPEN: DrumRecipe = {
  loudness: -16.1,
  seconds: 3.39,
  rise: 0.38,
  modes: [
    [515, -5.2, 3353],
    [959, -3, 4318],
    [1432, -6.8, 5173],
    [2080, -6.1, 5331],
    [5912, -4.5, 3885],
    [9200, -6.1, 3623],
  ],
  strikeT60: 60,
  noise: [
    [63, -42, -48, 4144],
    [125, -34.9, -40.9, 4144],
    [250, -19.4, -25.4, 3548],
    [500, -25, -31, 3793],
    [1000, -22.4, -28.4, 4279],
    [2000, -22.5, -28.5, 4144],
    [4000, -8.7, -14.7, 4023],
    [8000, -15, -21, 4400],
    [16000, -4.1, -10.1, 4541],
  ],
  cluster: { seed: 13, from: 300, to: 15500, count: 160, share: 0.5 },
  damp: { after: 800, t60: 6000 },
  open: 0,
};
