/**
 * Figures of pitched notes at velocity 80, for comparing the voices with.
 * Source: measured on the sounds of FluidR3 GM, a General MIDI sound set under the MIT licence, rendered dry, mono, at
 * 48 kHz, notes held 1 s (decay times: 6 s); figures only, no sample data. Times in milliseconds, levels in dB,
 * frequencies in Hz; loudness is the momentary maximum re the electric piano's C4 at velocity 80. The organ's
 * harmonics count from its 16' stop, half the pitch of the key.
 */
import type { NoteFigures } from '../helpers/instrument-measure';

export interface PitchedTarget extends Partial<Omit<NoteFigures, 'pitch'>> {
  readonly midi: number;
  readonly loudness: number;
  /** Loudness of velocities 45 and 110 re velocity 80. */
  readonly soft: number;
  readonly hard: number;
  /** From the end of the note to 20 dB under what it was 30 ms before. */
  readonly release20: number;
}

export type PitchedVoiceId =
  | 'upright-bass'
  | 'fingered-bass'
  | 'piano'
  | 'electric-piano'
  | 'organ'
  | 'guitar'
  | 'harmonica';

// biome-ignore format: a table, one group of figures a line
export const PITCHED_TARGETS: Readonly<Record<PitchedVoiceId, readonly PitchedTarget[]>> = {
  'upright-bass': [
    {
      midi: 28, attack: 55.22, timeToPeak: 62.41, sustain500: -2.9, decayEarly: -7.3, t20: 3385, t60Late: 16070, release20: 34.74,
      hnr: 19, bandwidth20: 252, bandwidth40: 542, loudness: -0.92, soft: -10, hard: 5.5,
      centroid: [908, 137, 105, 95.44],
      harmonics100: [0, -2.4, -6.1, -16.1, -22.4, -17.5, -30.8, -29.7, -37.1, -42.9, -36.2, -27.7, -36.5, -43.1, -47.3, -47.5],
      harmonics500: [-2.7, -4.3, -8.8, -24, -27.3, -25.8, -36.5, -37.6, -42.1, -46.6, -41.6, -42.7, -46.3, -54, -59.7, -64.3],
    },
    {
      midi: 35, attack: 34.19, timeToPeak: 52.63, sustain500: -7.7, decayEarly: -16.4, t20: 2338, t60Late: 13420, release20: 35.82,
      hnr: 27.8, bandwidth20: 138, bandwidth40: 560, loudness: -1.6, soft: -10, hard: 5.5,
      centroid: [591, 143, 114, 111],
      harmonics100: [0, -2.7, -20, -22.5, -42.1, -31.6, -27.6, -33.6, -38.1, -42.3, -40.4, -45.9, -58.5, -61.9, -60.3, -57.8],
      harmonics500: [-5, -16.2, -27.7, -28.9, -36.8, -45.2, -35.4, -48.7, -44.8, -52, -48.6, -52.6, -75.3, -67.9, -80, -80],
    },
    {
      midi: 41, attack: 61.67, timeToPeak: 73.86, sustain500: -6.3, decayEarly: -12.9, t20: 1954, t60Late: 10450, release20: 37.2,
      hnr: 25.4, bandwidth20: 268, bandwidth40: 705, loudness: -0.48, soft: -10, hard: 5.5,
      centroid: [803, 188, 145, 142],
      harmonics100: [0, -4.9, -18.1, -39.9, -27, -28.7, -35.2, -37.3, -42.5, -44.7, -55.6, -56.5, -51.2, -60.6, -48.4, -53.9],
      harmonics500: [-4.1, -11.6, -28.1, -34.3, -33, -40.3, -46.7, -47.9, -51.4, -58.8, -70.6, -72.9, -77.3, -73.1, -72, -77.1],
    },
    {
      midi: 48, attack: 34.67, timeToPeak: 35.86, sustain500: -13.8, decayEarly: -27, t20: 886, t60Late: 6006, release20: 33.8,
      hnr: 24.7, bandwidth20: 148, bandwidth40: 1453, loudness: -0.53, soft: -10, hard: 5.5,
      centroid: [782, 243, 281, 359],
      harmonics100: [0, -23.6, -22.9, -35.7, -32.3, -33.8, -37.4, -31.9, -39.4, -28.6, -36.5, -47, -40.5, -53.4, -54.3, -61.7],
      harmonics500: [-10.8, -20.1, -33.2, -33.3, -34.7, -46.9, -42.9, -35, -35.2, -38, -40.7, -59.1, -46.6, -57.5, -56.1, -73.2],
    },
    {
      midi: 55, attack: 14.21, timeToPeak: 13.22, sustain500: -8.7, decayEarly: -15.7, t20: 955, t60Late: 4943, release20: 34.86,
      hnr: 19.1, bandwidth20: 403, bandwidth40: 2161, loudness: -1.3, soft: -10, hard: 5.5,
      centroid: [826, 383, 338, 349],
      harmonics100: [0, -8.9, -20.5, -34.6, -22.2, -27.8, -32.5, -39.3, -30.9, -35.5, -37.1, -42.9, -57.5, -45.7, -49.9, -53.2],
      harmonics500: [-5.5, -16.3, -23.6, -40, -27.7, -33.3, -58.6, -50.2, -53.7, -59.3, -54, -66.1, -75.2, -65.9, -72.5, -67.5],
    },
  ],
  'fingered-bass': [
    {
      midi: 28, attack: 25.78, timeToPeak: 32.02, sustain500: -7.9, decayEarly: -14, t20: 3640, t60Late: 22560, inharmonicity: 0.00012, release20: 44.83,
      hnr: 40.3, bandwidth20: 378, bandwidth40: 592, loudness: -4.4, soft: -10, hard: 5.5,
      centroid: [191, 182, 178, 164],
      harmonics100: [-2.8, -2, 0, -4.1, -10.2, -16.8, -18.6, -16.8, -16.8, -20, -26.2, -28.7, -27.7, -30.9, -40.3, -44.7],
      harmonics500: [-7.2, -12.4, -4.3, -9, -17.3, -26.7, -23.2, -22, -27.8, -27.5, -36.9, -36.2, -34.7, -42, -57.8, -47],
    },
    {
      midi: 35, attack: 17.39, timeToPeak: 32.22, sustain500: -2.2, decayEarly: -3.8, t20: 4810, t60Late: 15720, inharmonicity: 0.0000746, release20: 46.41,
      hnr: 36.1, bandwidth20: 314, bandwidth40: 1068, loudness: 0.5, soft: -10, hard: 5.5,
      centroid: [231, 199, 180, 168],
      harmonics100: [-2.2, 0, -1.7, -8, -18.5, -27.7, -24, -23.8, -31.9, -36.6, -33.4, -39, -46.7, -65.1, -43.6, -37],
      harmonics500: [-3.7, -0.96, -3.6, -11.1, -21.6, -27.6, -29.8, -33, -45.7, -38.3, -38.6, -47.9, -54, -57, -48.9, -40.6],
    },
    {
      midi: 41, attack: 13.12, timeToPeak: 17.77, sustain500: -4.6, decayEarly: -9.2, t20: 5319, t60Late: 20180, inharmonicity: 0.0000531, release20: 44.53,
      hnr: 39.3, bandwidth20: 359, bandwidth40: 1239, loudness: -0.15, soft: -10, hard: 5.5,
      centroid: [254, 296, 290, 283],
      harmonics100: [-2.2, 0, -4.1, -12.3, -23.4, -25.3, -21.3, -20.4, -25.2, -35.4, -35.9, -29.4, -27.4, -31.9, -43.4, -52.7],
      harmonics500: [-14.2, -2.1, -7.9, -16.4, -29.6, -29.1, -31, -26.3, -30.1, -57.5, -55.6, -42.9, -32.1, -35.9, -54.4, -60.5],
    },
    {
      midi: 48, attack: 9.002, timeToPeak: 13.59, sustain500: -2.3, decayEarly: -3.9, t20: 5564, t60Late: 17800, release20: 45.66,
      hnr: 34.4, bandwidth20: 791, bandwidth40: 1573, loudness: 0.28, soft: -10, hard: 5.5,
      centroid: [319, 356, 344, 313],
      harmonics100: [-2.4, 0, -6, -24.1, -28, -17.4, -20.1, -34.1, -44.8, -29.6, -29, -40, -41.2, -65.3, -46, -52.1],
      harmonics500: [-2.5, -3.4, -7.6, -32.1, -33.2, -21.6, -24.9, -48.4, -50.2, -33.3, -35, -50, -56.8, -67.7, -53.4, -65.9],
    },
    {
      midi: 55, attack: 4.727, timeToPeak: 7.965, sustain500: -2.5, decayEarly: -4.7, t20: 5670, t60Late: 21030, inharmonicity: 0.0000645, release20: 47.69,
      hnr: 36, bandwidth20: 1184, bandwidth40: 2175, loudness: 0.15, soft: -10.1, hard: 5.4,
      centroid: [500, 535, 495, 439],
      harmonics100: [-2.2, 0, -5.6, -23.7, -31.9, -17, -20.1, -35.3, -47, -30.1, -29.9, -42.5, -47.1, -61.9, -46.5, -53.2],
      harmonics500: [-1.4, -5.2, -8.1, -32.8, -38.5, -22.2, -26.4, -49.9, -65, -35.8, -36.6, -52.1, -53.6, -75.1, -57.8, -74.2],
    },
  ],
  'piano': [
    {
      midi: 48, attack: 10.1, timeToPeak: 11.9, sustain500: -6, decayEarly: -10.7, t20: 2394, t60Late: 17120, inharmonicity: 0.000108, release20: 122,
      hnr: 26.1, bandwidth20: 3100, bandwidth40: 6485, loudness: -3.9, soft: -10, hard: 5.5,
      centroid: [1575, 1503, 1251, 1109],
      harmonics100: [-2.9, 0, -16.3, -18.9, -14.7, -18.8, -12.3, -17.8, -15.7, -9.6, -18.5, -11.6, -20.3, -23.5, -16.5, -19.5],
      harmonics500: [-7.4, -2.9, -20.6, -21.3, -21.2, -23.7, -19.1, -33.9, -22.2, -14.2, -22.3, -22.4, -24.2, -48.5, -20.8, -29.3],
    },
    {
      midi: 54, attack: 18.88, timeToPeak: 23.4, sustain500: -5.3, decayEarly: -12, t20: 2780, t60Late: 19770, inharmonicity: 0.000164, release20: 124,
      hnr: 28.6, bandwidth20: 1874, bandwidth40: 6180, loudness: -2.9, soft: -10, hard: 5.5,
      centroid: [1562, 1455, 1158, 1084],
      harmonics100: [-4.1, 0, -11.5, -20.9, -21, -30.1, -17.4, -15, -37.8, -13.4, -28.3, -28.1, -20.4, -33.6, -21.1, -27.7],
      harmonics500: [-6.1, -6.6, -17.9, -29.6, -23.2, -44.3, -22, -21.1, -45.3, -18.4, -41.5, -30.6, -26.8, -45.5, -26.2, -40.8],
    },
    {
      midi: 60, attack: 38.97, timeToPeak: 42.49, sustain500: -4, decayEarly: -9.8, t20: 1345, t60Late: 10100, inharmonicity: 0.000317, release20: 115,
      hnr: 36.4, bandwidth20: 2943, bandwidth40: 6832, loudness: -3.1, soft: -10, hard: 5.5,
      centroid: [1889, 1499, 1176, 948],
      harmonics100: [0, -3.1, -19.3, -20.6, -14.5, -24.6, -13.4, -28.9, -20.4, -32.7, -14.7, -31, -21.5, -28.4, -21.3, -26.2],
      harmonics500: [-2.7, -8.6, -27.9, -22.8, -32.2, -31.1, -23.6, -42.5, -26.8, -37.6, -25.7, -34.2, -32.6, -31.3, -38.3, -46.1],
    },
    {
      midi: 66, attack: 33.76, timeToPeak: 33.39, sustain500: -8.5, decayEarly: -19, t20: 995, t60Late: 12170, inharmonicity: 0.000417, release20: 127,
      hnr: 32, bandwidth20: 3394, bandwidth40: 7998, loudness: -6.6, soft: -10, hard: 5.5,
      centroid: [2474, 1873, 1681, 1513],
      harmonics100: [0, -6.5, -11.2, -17.8, -13.2, -10, -31.3, -15.6, -15.2, -42, -30.6, -21.4, -28.5, -25.1, -29.5, -28.6],
      harmonics500: [-6.8, -18.9, -20.8, -26.3, -19, -20.6, -37, -22.8, -32.9, -38.7, -36.1, -27.7, -43.9, -37, -40.7, -40.7],
    },
    {
      midi: 72, attack: 12.87, timeToPeak: 13.87, sustain500: -18.1, decayEarly: -38.3, t20: 525, t60Late: 9098, inharmonicity: 0.000888, release20: 118,
      hnr: 31.4, bandwidth20: 4879, bandwidth40: 6067, loudness: -4.5, soft: -10, hard: 5.5,
      centroid: [1891, 1623, 1531, 1615],
      harmonics100: [0, -13.7, -9.7, -15.3, -15, -20.3, -27.8, -42.6, -18.6, -35.8, -33.9, -42.3, -46.6, -43.7, -59.7, -58.6],
      harmonics500: [-18.4, -21.7, -19.1, -34.2, -26.5, -28.1, -50.4, -43.2, -38.6, -54.5, -60.2, -67, -75.1, -77.6, -80, -80],
    },
  ],
  'electric-piano': [
    {
      midi: 48, attack: 4.762, timeToPeak: 4.339, sustain500: -0.69, decayEarly: -1.4, t60Late: 33730, release20: 38.64,
      hnr: 50.1, bandwidth20: 923, bandwidth40: 1705, loudness: -3.1, soft: -10, hard: 5.5,
      centroid: [481, 479, 444, 383],
      harmonics100: [-7, 0, -8.4, -8.7, -10.8, -17.8, -14.9, -32.6, -20.7, -40.4, -27.8, -37.5, -36.3, -40.7, -46.6, -46.1],
      harmonics500: [-5, -0.81, -8.5, -12.1, -13, -25.4, -19.3, -48, -27.5, -38.9, -37.5, -42.7, -49.9, -49.4, -68.2, -57.9],
    },
    {
      midi: 54, attack: 4.719, timeToPeak: 3.209, sustain500: -1.3, decayEarly: -2.7, t20: 4148, t60Late: 9903, release20: 37.53,
      hnr: 50.6, bandwidth20: 938, bandwidth40: 1853, loudness: -1.4, soft: -10, hard: 5.5,
      centroid: [535, 524, 485, 419],
      harmonics100: [-3, 0, -6.2, -11.6, -11.6, -29.9, -20.5, -38.6, -31.1, -39.9, -44.2, -47.4, -61.9, -57.4, -80, -69.5],
      harmonics500: [-1.8, -2.1, -8.1, -17.8, -16.5, -65.9, -28.2, -40.9, -42.7, -48.5, -61.6, -60.1, -80, -74.2, -80, -80],
    },
    {
      midi: 60, attack: 4.685, timeToPeak: 3.476, sustain500: -1.2, decayEarly: -2.5, t20: 3770, t60Late: 8991, release20: 37.84,
      hnr: 51.7, bandwidth20: 1315, bandwidth40: 2099, loudness: 0, soft: -10, hard: 5.5,
      centroid: [572, 565, 524, 451],
      harmonics100: [0, -3.9, -7.2, -25.4, -17.6, -32.4, -32.8, -39.1, -54, -51.7, -70.3, -68.1, -77, -80, -80, -80],
      harmonics500: [0.15, -7.7, -11.1, -45.4, -25.9, -38.5, -45.9, -50.7, -80, -68.3, -80, -80, -80, -80, -80, -80],
    },
    {
      midi: 66, attack: 5.715, timeToPeak: 4.435, sustain500: -1.7, decayEarly: -3.7, t20: 2024, t60Late: 7619, release20: 37.54,
      hnr: 52.1, bandwidth20: 1119, bandwidth40: 1859, loudness: 1.8, soft: -10, hard: 5.5,
      centroid: [614, 594, 554, 497],
      harmonics100: [0, -13.5, -13.8, -30.9, -33.9, -41.2, -56.1, -60.3, -74.3, -80, -80, -80, -80, -80, -80, -80],
      harmonics500: [-1.3, -19.3, -20, -36.9, -45.9, -53.3, -79.5, -79.4, -80, -80, -80, -80, -80, -80, -80, -80],
    },
    {
      midi: 72, attack: 4.884, timeToPeak: 3.762, sustain500: -2.4, decayEarly: -5.1, t20: 1754, t60Late: 7036, release20: 37.44,
      hnr: 55.6, bandwidth20: 1575, bandwidth40: 2102, loudness: 1.8, soft: -10, hard: 5.5,
      centroid: [769, 740, 693, 633],
      harmonics100: [0, -18.8, -17.5, -32.7, -45.8, -52.4, -59.9, -70.7, -80, -80, -80, -80, -80, -80, -80, -80],
      harmonics500: [-2, -25.5, -24.8, -41.4, -59.7, -66.5, -80, -80, -80, -80, -80, -80, -80, -80, -80, -80],
    },
  ],
  'organ': [
    {
      midi: 48, attack: 20.13, timeToPeak: 20.35, sustain500: -1, decayEarly: -1, release20: 27.03,
      hnr: 38.1, bandwidth20: 1055, bandwidth40: 2956, loudness: -4.4, soft: -11, hard: 7.6,
      centroid: [368, 256, 240, 203],
      harmonics100: [-1.5, 0, -43.2, -4.1, -41.2, -15.3, -48, -10, -48.2, -53.7, -64, -49.2, -73, -62.2, -57.5, -16.8],
      harmonics500: [-1.5, -0.24, -46.9, -4.6, -45, -15, -52.5, -14.1, -53.5, -59.6, -77, -50.7, -73.2, -75.6, -70.1, -27.6],
    },
    {
      midi: 54, attack: 12.4, timeToPeak: 13.19, sustain500: -1.4, decayEarly: -1.6, release20: 30.55,
      hnr: 36.5, bandwidth20: 1487, bandwidth40: 4178, loudness: -3.9, soft: -11.1, hard: 7.5,
      centroid: [404, 359, 322, 318],
      harmonics100: [-1.5, 0, -43.6, -4.2, -41.5, -15.3, -48.6, -10.2, -47.7, -55.9, -66.9, -48.5, -73.3, -65.1, -57.4, -17.4],
      harmonics500: [-1.6, -0.35, -45.4, -5.8, -45.4, -15.1, -57.2, -20.6, -64.4, -60.8, -75.2, -57.6, -76.7, -69.6, -58.2, -17.6],
    },
    {
      midi: 60, attack: 15.77, timeToPeak: 16.27, sustain500: -1.9, decayEarly: -3.5, release20: 28.85,
      hnr: 37.7, bandwidth20: 2098, bandwidth40: 2111, loudness: -3.8, soft: -11, hard: 7.6,
      centroid: [514, 503, 409, 448],
      harmonics100: [-1.5, 0, -45.2, -4.3, -42.1, -15.1, -49.8, -10.4, -48, -57.3, -68, -47.8, -74.7, -66, -58, -18.8],
      harmonics500: [-1.7, -1, -46.4, -11.9, -49.3, -15.1, -66.7, -21.2, -53.7, -56.7, -68.1, -48, -78.9, -63.2, -56.3, -17.4],
    },
    {
      midi: 66, attack: 11.6, timeToPeak: 14, sustain500: -3, decayEarly: -6.4, release20: 31.47,
      hnr: 41.4, bandwidth20: 1493, bandwidth40: 2978, loudness: -3.9, soft: -11.1, hard: 7.6,
      centroid: [713, 692, 602, 650],
      harmonics100: [-1.4, 0, -45.6, -4.1, -42.9, -15, -51, -11, -48.9, -58.5, -70.3, -47.9, -74.9, -71.3, -60.4, -21.9],
      harmonics500: [-1.9, -3.4, -48.9, -18.1, -60.9, -15, -53.5, -11.2, -47.5, -62.7, -68.4, -48.9, -76.5, -74.2, -70.2, -23.2],
    },
    {
      midi: 72, attack: 12.86, timeToPeak: 14.28, sustain500: -4.9, decayEarly: -10.5, release20: 29.88,
      hnr: 45.9, bandwidth20: 2105, bandwidth40: 4206, loudness: -4.1, soft: -11.1, hard: 7.5,
      centroid: [987, 936, 879, 1049],
      harmonics100: [-1.4, 0, -45.1, -4.1, -43.5, -14.9, -51.4, -12.2, -50.5, -58.7, -72.4, -49.3, -80, -78.4, -67.1, -28.5],
      harmonics500: [-2.3, -12.4, -56.9, -15.4, -45.8, -14.9, -49.3, -10.8, -51.9, -60.6, -72, -55.9, -76.9, -64.2, -57.1, -21.5],
    },
  ],
  'guitar': [
    {
      midi: 48, attack: 15.84, timeToPeak: 17.66, sustain500: -4.1, decayEarly: -7.2, t60Late: 26590, inharmonicity: 0.000147, release20: 29.14,
      hnr: 42.5, bandwidth20: 1200, bandwidth40: 2515, loudness: -1.6, soft: -10.7, hard: 5.7,
      centroid: [1070, 847, 522, 327],
      harmonics100: [0, -10.6, -17.7, -17.4, -12.3, -24.9, -33.2, -13.3, -10.2, -23.6, -20.8, -26, -32.8, -34.8, -20.8, -25.7],
      harmonics500: [-1.8, -13.9, -22.4, -23.1, -24.4, -34.3, -43.8, -31.4, -23.1, -36.1, -37.8, -50.9, -55.4, -66.4, -49, -58.9],
    },
    {
      midi: 54, attack: 5.9, timeToPeak: 5.52, sustain500: -7, decayEarly: -13, t20: 2888, t60Late: 24350, inharmonicity: 0.0000919, release20: 28.77,
      hnr: 41.1, bandwidth20: 2811, bandwidth40: 3192, loudness: -3.4, soft: -13.5, hard: 6.2,
      centroid: [1212, 1229, 939, 742],
      harmonics100: [-3.8, 0, -10.4, -1.5, -3.6, -13.5, -14.7, -2.7, -5.2, -13.9, -11, -13.3, -32.4, -18.2, -18.2, -38.2],
      harmonics500: [-8.2, -2.6, -17, -5.5, -7.7, -26.5, -17.8, -16.8, -18.4, -31.3, -29, -32.4, -47.4, -50.9, -50.1, -70.8],
    },
    {
      midi: 60, attack: 6.284, timeToPeak: 10.96, sustain500: -6.1, decayEarly: -13.1, t20: 1627, t60Late: 17960, inharmonicity: 0.000167, release20: 29.17,
      hnr: 38, bandwidth20: 2908, bandwidth40: 4538, loudness: -0.69, soft: -16.8, hard: 7.1,
      centroid: [1447, 1413, 1384, 1233],
      harmonics100: [-8.7, -3.4, -8.8, -1.2, 0, -19.9, -27.1, -9.6, -5.5, -17, -13, -22.4, -47, -35.1, -29, -47.3],
      harmonics500: [-12.6, -7.4, -13.2, -5.6, -5.5, -25.4, -29.3, -17.1, -13.1, -25.4, -22.4, -32.8, -62.1, -46.9, -41.9, -65.7],
    },
    {
      midi: 66, attack: 3.762, timeToPeak: 8.176, sustain500: -5.8, decayEarly: -12, t20: 3642, t60Late: 15630, release20: 28.61,
      hnr: 46.7, bandwidth20: 2962, bandwidth40: 4072, loudness: -0.54, soft: -14.5, hard: 6.6,
      centroid: [1294, 1228, 1274, 1314],
      harmonics100: [-10, 0, -12.9, -8.6, -18.6, -25.9, -12.8, -19.3, -35.4, -41.7, -39, -51, -55.2, -67.6, -80, -80],
      harmonics500: [-12.7, -6, -28.4, -17, -8.9, -22.3, -19.8, -27.4, -41.7, -45.6, -50.2, -60.4, -68.8, -77.7, -80, -80],
    },
    {
      midi: 72, attack: 4.468, timeToPeak: 9.366, sustain500: -5.4, decayEarly: -10.9, t20: 2440, t60Late: 13610, release20: 28.68,
      hnr: 48.4, bandwidth20: 3151, bandwidth40: 4207, loudness: 1.1, soft: -16.9, hard: 7.1,
      centroid: [1355, 1350, 1477, 1370],
      harmonics100: [0, -1.8, -1.8, -2.4, -14.9, -17.1, -42.3, -29.9, -46.5, -54.1, -68.3, -80, -80, -80, -80, -80],
      harmonics500: [-4.5, -9.4, -4.4, -4.8, -26.8, -33.9, -59.1, -41.4, -59.4, -68.4, -80, -80, -80, -80, -80, -80],
    },
  ],
  'harmonica': [
    {
      midi: 55, attack: 61.55, timeToPeak: 86.18, sustain500: -3.6, decayEarly: -7.1, release20: 45.76,
      hnr: 36.8, bandwidth20: 2146, bandwidth40: 5679, loudness: -2.4, soft: -10, hard: 5.5,
      centroid: [2321, 1145, 1629, 1583],
      harmonics100: [0, -6.7, -8, -21.1, -13.7, -7.6, -19.5, -15.6, -16.8, -20.2, -19.7, -34.3, -24.1, -32.1, -20.2, -34.1],
      harmonics500: [-3.9, -9.7, -10.3, -25.5, -18.1, -10.5, -18.8, -16, -18.5, -19.8, -19.1, -33.5, -23.4, -38.7, -18.8, -34.3],
    },
    {
      midi: 66, attack: 44.64, timeToPeak: 64.47, sustain500: -5, decayEarly: -11.6, release20: 46.05,
      hnr: 43.1, bandwidth20: 5187, bandwidth40: 10730, loudness: -3.2, soft: -10, hard: 5.5,
      centroid: [3648, 2593, 2346, 2066],
      harmonics100: [0, -6.2, -6.2, -10.4, -13.9, -10.3, -26.4, -25.8, -24.8, -13.1, -13.8, -8.8, -20.9, -16.1, -26.4, -25],
      harmonics500: [-4.8, -10.5, -10.5, -14.6, -18.2, -14.4, -30.7, -31.3, -29.9, -18.8, -19.1, -15.2, -27.9, -24.1, -35.4, -33.8],
    },
    {
      midi: 76, attack: 16.74, timeToPeak: 21.92, sustain500: -5.7, decayEarly: -11.4, release20: 46.35,
      hnr: 35.8, bandwidth20: 7915, bandwidth40: 12530, loudness: -0.22, soft: -10, hard: 5.5,
      centroid: [3014, 3780, 3424, 3079],
      harmonics100: [-9.4, -16.5, 0, -15.7, -9.9, -22.3, -8.7, -19.9, -17.7, -22.8, -21.5, -18.5, -36.1, -27.4, -25.2, -38.6],
      harmonics500: [-13.8, -20.9, -4.2, -19.9, -14.3, -26.9, -14.1, -26.2, -25.1, -31.2, -30.8, -28.7, -47.1, -39, -37.3, -51.2],
    },
    {
      midi: 86, attack: 53.95, timeToPeak: 65.03, sustain500: -5.4, decayEarly: -12.9, release20: 46.1,
      hnr: 47.5, bandwidth20: 5889, bandwidth40: 10580, loudness: -0.02, soft: -10, hard: 5.5,
      centroid: [2522, 3647, 3599, 3370],
      harmonics100: [0, -11.6, -8.3, -6, -3.5, -20.6, -23.8, -44.9, -39.3, -55.5, -80, -72.5, -80, -80, -80, -80],
      harmonics500: [-4.8, -16.2, -13.1, -11.4, -10.2, -28.8, -33.9, -56.4, -51.7, -68.5, -80, -80, -80, -80, -80, -80],
    },
    {
      midi: 96, attack: 24.23, timeToPeak: 34.67, sustain500: -4.8, decayEarly: -9, release20: 46.35,
      hnr: 47, bandwidth20: 10480, bandwidth40: 14660, loudness: -2, soft: -10, hard: 5.5,
      centroid: [3870, 4829, 4664, 4549],
      harmonics100: [0, -12.3, -11.5, -12.4, -12.9, -32.5, -38.6, -62.6, -61.1],
      harmonics500: [-3.9, -16.2, -15.5, -17.2, -18.8, -39.8, -47.3, -72.6, -72],
    },
  ],
};

/** The one instrument of the set whose velocity changes its tone: centroids of the guitar at 10, 50, 200 and 500 ms. */
export const GUITAR_CENTROIDS: readonly {
  readonly midi: number;
  readonly soft: readonly number[];
  readonly hard: readonly number[];
}[] = [
  { midi: 48, soft: [564, 466, 336, 248], hard: [1269, 956, 549, 333] },
  { midi: 54, soft: [670, 733, 612, 541], hard: [1464, 1422, 1025, 774] },
  { midi: 60, soft: [884, 886, 894, 810], hard: [1742, 1701, 1635, 1429] },
  { midi: 66, soft: [855, 806, 824, 824], hard: [1545, 1500, 1494, 1508] },
  { midi: 72, soft: [895, 887, 939, 892], hard: [1624, 1610, 1646, 1505] },
];
