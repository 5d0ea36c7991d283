import type { DrumRecipe } from './drum-recipe';

/** Hand percussion without measured figures: by design, in the manner of the measured claves and congas. */

/** Two partials a little wider than a fifth apart, and the thin clank of a folded plate. */
export const COWBELL: DrumRecipe = {
  loudness: -8.5,
  seconds: 0.4,
  rise: 0.5,
  modes: [
    [565, 0, 260],
    [842, -1, 240],
    [1420, -10, 160],
    [2130, -12, 140],
    [3280, -15, 110],
    [4650, -19, 80],
  ],
  strikeT60: 25,
  noise: [
    [500, -26, -50, 120],
    [1000, -22, -46, 120],
    [2000, -20, -44, 100],
    [4000, -20, -46, 90],
    [8000, -26, -54, 70],
  ],
  open: 1,
};

/** A burst of seeds: no pitch, hardly any body, and a soft start, since the seeds arrive one after another. */
export const MARACAS: DrumRecipe = {
  loudness: -15,
  seconds: 0.22,
  rise: 9,
  modes: [],
  strikeT60: 90,
  noise: [
    [2000, -24, -44, 160],
    [4000, -10, -30, 170],
    [8000, 0, -20, 180],
    [12000, -2, -24, 160],
  ],
  open: 0.8,
};
