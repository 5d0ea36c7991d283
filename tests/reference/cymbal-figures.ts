import type { MeasuredDrum } from './drum-figures';

/**
 * Figures of cymbals and jingles, taken like those of the drums. Source: measured on the FluidR3 General MIDI sound set
 * (MIT licence); only figures were kept.
 */
// biome-ignore format: a table, one group of figures a line
export const MEASURED_CYMBALS: readonly MeasuredDrum[] = [
  {
    name: 'closed hi-hat', kit: 'sticks', key: 42,
    figures: {
      attack: 4.395, timeToPeak: 2.71, t20: 107, t60: 591, t60Early: 278, t60Late: 636,
      crest: 12.8, flatness: -3.7, tonalToNoise: -3.3, loudness: -17.7,
      bands: [-53.1, -50.2, -35.2, -19.7, -22.7, -20.4, -18.1, -8.4, -6.4, -2.4],
      bandT60: [null, null, null, 337, 272, 311, 278, 303, 269, 217],
      centroid: [8746, 9531, 8097],
      modes: [[4425, 0, 162], [9416, -2.6, 230], [11132, -3.8, 234], [12330, -5, 236]],
    },
    at: {
      30: { loudness: -32.4 },
      110: { loudness: -9.8 },
    },
  },
  {
    name: 'pedal hi-hat', kit: 'sticks', key: 44,
    figures: {
      attack: 11.76, timeToPeak: 13.24, t20: 65.19, t60: 347, t60Early: 176, t60Late: 474,
      crest: 12.8, flatness: -4.1, tonalToNoise: -4.6, loudness: -17.2,
      bands: [-36, -34.4, -25.6, -9.4, -18.7, -18, -17.6, -12.4, -7.5, -2.2],
      bandT60: [null, null, 303, 288, 278, 252, 242, 346, 254, 168],
      centroid: [7366, 9329, 7774],
      modes: [[254, 0, 299], [300, -4.3, 292], [227, -5.4, 335], [202, -6, 314]],
    },
    at: {
      30: { loudness: -31.9 },
      110: { loudness: -9.3 },
    },
  },
  {
    name: 'open hi-hat', kit: 'sticks', key: 46,
    figures: {
      attack: 3.713, timeToPeak: 2.024, t20: 936, t60: 2972, t60Early: 4604, t60Late: 2685,
      crest: 14.8, flatness: -4.4, tonalToNoise: -6.4, loudness: -16.1,
      bands: [-47.9, -42, -34.9, -19.4, -15, -12.4, -12.5, -8.7, -5, -4.1],
      bandT60: [null, null, null, 3548, 3793, 4279, 4144, 4023, 4400, 4541],
      centroid: [8397, 8256, 7244],
      modes: [[959, 0, 4318], [5912, -1.5, 3885], [515, -2.2, 3353], [2080, -3.1, 5331]],
    },
    at: {
      30: { loudness: -30.8 },
      110: { loudness: -8.2 },
    },
  },
  {
    name: 'crash', kit: 'sticks', key: 49,
    figures: {
      attack: 8.913, timeToPeak: 9.19, t20: 1577, t60: 6768, t60Early: 4953, t60Late: 8616,
      crest: 10.9, flatness: -9.8, tonalToNoise: -1.1, loudness: -4.9,
      bands: [-76.3, -67.3, -46.1, -23.7, -9.8, -8.7, -10.2, -3.2, -7.7, -20],
      bandT60: [null, null, null, 9038, 5216, 5931, 7461, 5550, 3721, 2570],
      centroid: [3790, 5107, 6454],
      modes: [[4423, 0, 4544], [3805, -0.6, 4110], [591, -1, 5265], [5503, -1.8, 3425]],
    },
    at: {
      30: { loudness: -19.6 },
      110: { loudness: 3 },
    },
  },
  {
    name: 'ride', kit: 'sticks', key: 51,
    figures: {
      attack: 3.401, timeToPeak: 2.084, t20: 505, t60: 2251, t60Early: 2784, t60Late: 2299,
      crest: 15.5, flatness: -5.5, tonalToNoise: -3.8, loudness: -14.1,
      bands: [-64.2, -45.9, -40.2, -22.2, -23, -16.5, -12.6, -6.9, -3.9, -5.2],
      bandT60: [null, null, null, 3004, 3162, 3375, 3246, 2498, 1726, 738],
      centroid: [9212, 7987, 6249],
      modes: [[3512, 0, 2243], [2709, -3, 2419], [8480, -3, 1387], [7498, -4, 1536]],
    },
    at: {
      30: { loudness: -28.8 },
      110: { loudness: -6.2 },
    },
  },
  {
    name: 'ride bell', kit: 'sticks', key: 53,
    figures: {
      attack: 4.505, timeToPeak: 2.747, t20: 828, t60: 3278, t60Early: 5612, t60Late: 2645,
      crest: 14.6, flatness: -13, tonalToNoise: 2.7, loudness: -13.1,
      bands: [-62.8, -52.4, -41.7, -23.5, -20.8, -12.4, -5, -3, -9.9, -20.9],
      bandT60: [null, null, null, 5969, 5008, 5644, 5400, 4072, 2151, 734],
      centroid: [5248, 4622, 3747],
      modes: [[2870, 0, 3128], [1992, -3.5, 5634], [2595, -4.9, 5442], [4276, -6.4, 2557]],
    },
    at: {
      30: { loudness: -27.8 },
      110: { loudness: -5.2 },
    },
  },
  {
    name: 'tambourine', kit: 'sticks', key: 54,
    figures: {
      attack: 6.23, timeToPeak: 10.1, t20: 162, t60: 500, t60Early: 507, t60Late: 290,
      crest: 12.8, flatness: -11, tonalToNoise: 3.7, loudness: -7.1,
      bands: [-45.5, -48.9, -49.8, -53.5, -50.6, -40.3, -31.2, -6.3, -4.4, -3.9],
      bandT60: [null, null, null, null, null, null, null, 477, 513, 530],
      centroid: [9412, 9426, 9178],
      modes: [[11407, 0, 548], [5021, -0.5, 330], [6761, -0.7, 550], [6367, -2.3, 324]],
    },
    at: {
      30: { loudness: -21.8 },
      110: { loudness: 0.8 },
    },
  },
];
