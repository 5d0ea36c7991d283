/**
 * Levels of the tonewheel organ's partials, numbered from the 16' stop: 1 16', 2 8', 4 4', 6 2⅔', 8 2', 16 1'; the
 * others are leakage. dB re the 8' stop at C4, and dB per octave of key.
 * Source: trends of the drawbar organ of FluidR3 GM (MIT licence) as measured; no sample data.
 */
export const ORGAN_DRAWBARS: readonly { readonly level: number; readonly perOctave: number }[] = [
  { level: -1.5, perOctave: 0 },
  { level: 0, perOctave: 0 },
  { level: -44.5, perOctave: -1 },
  { level: -4.1, perOctave: 0 },
  { level: -42.2, perOctave: -1.2 },
  { level: -15.1, perOctave: 0.2 },
  { level: -49.8, perOctave: -1.7 },
  { level: -10, perOctave: -0.3 },
  { level: -48.7, perOctave: -1.1 },
  { level: -56.8, perOctave: -2.3 },
  { level: -68.3, perOctave: -4.2 },
  { level: -47.5, perOctave: 0 },
  { level: -75, perOctave: -3 },
  { level: -70, perOctave: -8 },
  { level: -61, perOctave: -4.8 },
  { level: -17, perOctave: -0.8 },
];

/** Momentary loudness at velocity 80 re the reference of all voices, LU. */
export const ORGAN_LOUDNESS = -3.8;
