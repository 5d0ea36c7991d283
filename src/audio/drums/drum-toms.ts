import type { DrumRecipe } from './drum-recipe';

/**
 * Overtones of a drum head over its fundamental: the ideal membrane's ratios 1, 1.59, 2.14, 2.30, 2.65 and 2.92 (zeros
 * of the Bessel functions), drawn towards the whole-number series as the air inside does. Levels and lengths by design,
 * in the manner of the measured congas and kicks.
 */
const OVERTONES: readonly (readonly [ratio: number, level: number, share: number])[] = [
  [1.5, -13, 0.6],
  [1.98, -18, 0.45],
  [2.44, -23, 0.35],
  [2.9, -27, 0.3],
];

/** Level of the stick on the head in each octave: strike and ring, re the fundamental. */
const HEAD_NOISE: readonly (readonly [hz: number, strike: number, ring: number])[] = [
  [125, -16, -40],
  [250, -16, -36],
  [500, -18, -38],
  [1000, -21, -42],
  [2000, -24, -46],
  [4000, -28, -52],
  [8000, -36, -62],
];

/** A tom of the given fundamental (Hz), ringing time (T60 in ms) and loudness (LU re the electric piano). */
const tom = (hz: number, t60: number, loudness: number): DrumRecipe => ({
  loudness,
  seconds: (t60 / 1000) * 1.1 + 0.05,
  rise: 2,
  // the slack head of a hard stroke is sharp at first and settles within about 60 ms
  glide: { mode: [hz, 0, t60], ratio: 1.1, settle: 45 },
  modes: OVERTONES.map(([ratio, level, share]) => [hz * ratio, level, t60 * share]),
  strikeT60: 45,
  noise: HEAD_NOISE.map(([centre, strike, ring]) => [centre, strike, ring, t60 * 0.6]),
  open: 1.5,
  accent: 0.5,
  ring: 0.1,
});

/** From the low floor tom (41) up to the small rack tom (50); about three semitones apart. */
export const TOM_FLOOR_LOW = tom(82, 720, -9);
export const TOM_FLOOR_HIGH = tom(98, 660, -9);
export const TOM_LOW = tom(117, 600, -9);
export const TOM_LOW_MIDDLE = tom(139, 540, -9);
export const TOM_HIGH_MIDDLE = tom(165, 490, -9);
export const TOM_HIGH = tom(196, 440, -9);
