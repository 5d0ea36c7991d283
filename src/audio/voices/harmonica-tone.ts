import type { ReedAnchor } from '../synthesis/free-reed';

/**
 * Tone of the harmonica at velocity 80.
 * Source: fitted to figures (levels, onset, centroids, noise) measured on the harmonica of FluidR3 GM (MIT licence);
 * no sample data. Its highest key has nine harmonics below 20 kHz.
 */
export const HARMONICA_TONE: readonly ReedAnchor[] = [
  {
    midi: 55,
    levels: [0, -6.5, -7.5, -20.5, -14, -7.5, -18.5, -15.5, -17, -19.5, -19, -34.5, -24, -31, -19.5, -34.5],
    falls: [4, 3.5, 2.5, 5, 5, 3.5, 0, 1, 2.5, 0, 0, -0.5, 0, 8, -1, 1],
    rolloff: -8.6,
    loudness: -1.9,
    rise: 0.028,
    lag: 0.26,
    breathLevel: -40,
    chiffLevel: -24,
  },
  {
    midi: 66,
    levels: [0, -6, -6, -11, -14, -9.5, -27, -26, -24, -13, -14.5, -8.5, -20.5, -16.5, -26, -24.5],
    falls: [5, 4.5, 4.5, 4.5, 4.5, 4.5, 4.5, 6, 5.5, 6, 5.5, 6.5, 7.5, 8.5, 9.5, 9],
    rolloff: -22,
    loudness: -2.7,
    rise: 0.029,
    lag: 0.029,
    breathLevel: -47.5,
    chiffLevel: -17,
  },
  {
    midi: 76,
    levels: [-9, -16.5, 0, -16, -10, -22, -8, -19, -17, -22.5, -21.5, -19, -36, -27, -24.5, -38],
    falls: [4.5, 4.5, 4, 4.5, 4.5, 5, 5.5, 6.5, 7.5, 8.5, 9.5, 10, 12, 11.5, 12, 12.5],
    rolloff: -23,
    loudness: -0.4,
    rise: 0.0072,
    lag: 0.93,
    breathLevel: -40,
    chiffLevel: -36.5,
  },
  {
    midi: 86,
    levels: [0, -11.5, -8.5, -6, -2.5, -19.5, -23.5, -45, -39.5, -55, -80, -71.5, -80, -80, -80, -80],
    falls: [5, 5, 5, 6, 7, 8.5, 10.5, 12, 13, 14.5, -0.5, 19, -2, -4, 0, 2],
    rolloff: -11,
    loudness: 0.5,
    rise: 0.025,
    lag: 0.66,
    breathLevel: -51,
    chiffLevel: -41.5,
  },
  {
    midi: 96,
    levels: [0, -12.5, -11.5, -12, -13, -33, -39, -62, -60.5],
    falls: [4, 4, 4, 5, 6, 7.5, 9, 10.5, 13],
    rolloff: -12,
    loudness: -1.9,
    rise: 0.014,
    lag: 0.68,
    breathLevel: -51.5,
    chiffLevel: -37,
  },
];
