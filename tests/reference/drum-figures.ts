/**
 * Figures of real drums and cymbals at three velocities. Source: measured on the FluidR3 General MIDI sound set (MIT
 * licence), rendered dry at 48 kHz; only figures were kept. `HitFigures` says what each figure is; loudness is in LU re
 * the same set's electric piano, C4 at velocity 80. `at[30]` and `at[110]` list what differs from velocity 70.
 */
type Levels = readonly (number | null)[];

export interface MeasuredFigures {
  readonly attack: number;
  readonly timeToPeak: number;
  readonly t20: number;
  readonly t60: number;
  readonly t60Early: number;
  readonly t60Late: number;
  readonly crest: number;
  readonly flatness: number;
  readonly tonalToNoise: number;
  readonly loudness: number;
  readonly bands: readonly number[];
  readonly bandT60: Levels;
  readonly centroid: Levels;
  readonly body?: Levels;
  /** Hz, dB, T60 in ms. */
  readonly modes: readonly (readonly [hz: number, db: number, t60: number])[];
}

export interface MeasuredDrum {
  readonly name: string;
  readonly kit: 'sticks' | 'brushes';
  readonly key: number;
  readonly figures: MeasuredFigures;
  readonly at: Readonly<Record<30 | 110, Partial<MeasuredFigures>>>;
}

// biome-ignore format: a table, one group of figures a line
export const MEASURED_DRUMS: readonly MeasuredDrum[] = [
  {
    name: 'deep kick', kit: 'sticks', key: 35,
    figures: {
      attack: 23.99, timeToPeak: 23.33, t20: 54.95, t60: 269, t60Early: 320, t60Late: 316,
      crest: 9.5, flatness: -35.7, tonalToNoise: 4.6, loudness: -12.4,
      bands: [-10, -3.6, -3.6, -18.6, -26.5, -30.6, -22.9, -23.9, -37.2, -67.4],
      bandT60: [316, 287, 170, 281, 347, null, 257, 218, null, null],
      centroid: [1192, 524, 748], body: [93.92, 61.14, 40.23, 36.7],
      modes: [[50.1, 0, 400], [92.8, -0.7, 158], [39.4, -2.9, 396], [161, -11.8, 315]],
    },
    at: {
      30: { loudness: -27.1 },
      110: {
        attack: 24.65, t60: 278, t60Early: 381, t60Late: 337,
        crest: 10.4, flatness: -29, loudness: -3.8,
        bands: [-10.3, -3.7, -3.6, -18.5, -25.8, -30.5, -21.4, -21.3, -30.5, -57.5],
        bandT60: [311, 320, 192, 343, 442, null, 277, 230, null, null],
        centroid: [1391, 607, 849],
        modes: [[50.3, 0, 425], [93.4, -0.9, 159], [39.1, -2.8, 383], [161, -11.3, 469]],
      },
    },
  },
  {
    name: 'kick', kit: 'sticks', key: 36,
    figures: {
      attack: 22.45, timeToPeak: 21.91, t20: 51.89, t60: 255, t60Early: 308, t60Late: 301,
      crest: 9.5, flatness: -35.7, tonalToNoise: 4.1, loudness: -12.5,
      bands: [-11.3, -3.9, -3.1, -17.3, -25.9, -30.9, -23.6, -23.8, -36.5, -64.5],
      bandT60: [279, 294, 160, 274, 325, null, 251, 224, null, null],
      centroid: [1231, 536, 755], body: [96.45, 70.89, 40.29, 42.62],
      modes: [[53, 0, 373], [98.2, -0.8, 144], [41.6, -2.8, 370], [171, -12.1, 305]],
    },
    at: {
      30: { loudness: -27.2 },
      110: {
        attack: 7.435, t60: 262, t60Early: 361, t60Late: 318,
        crest: 10.6, flatness: -29.7, tonalToNoise: 4.3, loudness: -3.9,
        bands: [-11.5, -4, -3.1, -17.1, -25.5, -30.5, -22.1, -20.9, -30.3, -54.9],
        bandT60: [285, 321, 172, 337, 428, null, 269, 224, null, null],
        centroid: [1451, 630, 871],
        modes: [[53.3, 0, 394], [98.9, -0.9, 148], [41.4, -2.7, 361], [170, -11.4, 460]],
      },
    },
  },
  {
    name: 'side stick', kit: 'sticks', key: 37,
    figures: {
      attack: 3.9, timeToPeak: 2.862, t20: 63.53, t60: 988, t60Early: 907, t60Late: 1443,
      crest: 15.8, flatness: -9.4, tonalToNoise: -1.8, loudness: -11.6,
      bands: [-37.6, -33.4, -33.7, -21.6, -19.6, -5.4, -8.5, -4.1, -8.1, -23.2],
      bandT60: [null, null, null, 1603, 1817, 1572, 1609, 1420, 772, 207],
      centroid: [3974, 5706, 3892],
      modes: [[1204, 0, 1783], [1288, -2.8, 1300], [3095, -3.3, 1758], [4207, -5.9, 1051]],
    },
    at: {
      30: { loudness: -26.3 },
      110: { loudness: -3.7 },
    },
  },
  {
    name: 'snare', kit: 'sticks', key: 38,
    figures: {
      attack: 7.957, timeToPeak: 7.135, t20: 66.25, t60: 311, t60Early: 315, t60Late: 387,
      crest: 13.3, flatness: -24.1, tonalToNoise: 4.1, loudness: -9.6,
      bands: [-31.1, -26.6, -13.2, -1.2, -10.6, -15.5, -16.3, -15.3, -18.6, -45.7],
      bandT60: [null, 62.34, 260, 330, 381, 407, 334, 354, 291, null],
      centroid: [1753, 3646, 3370], body: [212, 200, 195, 289],
      modes: [[208, 0, 287], [189, -5.9, 326], [238, -6.1, 175], [161, -13.2, 336]],
    },
    at: {
      30: { loudness: -24.3 },
      110: {
        attack: 5.491, timeToPeak: 6.943, t20: 86.33, t60: 382, t60Early: 357, t60Late: 463,
        crest: 13.6, flatness: -20.9, tonalToNoise: 3.3, loudness: -0.68,
        bands: [-29.1, -29, -14, -1.4, -9.2, -15.4, -15.4, -14.2, -16.4, -40.3],
        bandT60: [109, 79.58, 292, 379, 440, 469, 383, 402, 347, null],
        centroid: [1984, 4010, 3734],
        modes: [[208, 0, 318], [189, -5.7, 344], [238, -6.2, 199], [468, -13.1, 417]],
      },
    },
  },
  {
    name: 'crisp snare', kit: 'sticks', key: 40,
    figures: {
      attack: 7.387, timeToPeak: 6.406, t20: 74.43, t60: 362, t60Early: 255, t60Late: 476,
      crest: 14, flatness: -20.8, tonalToNoise: 0.98, loudness: -11.9,
      bands: [-48.2, -36.5, -18.9, -1.5, -11.1, -11.1, -12.8, -12.7, -16, -39.6],
      bandT60: [null, null, 98.2, 262, 462, 412, 263, 253, 270, null],
      centroid: [2368, 3714, 2894], body: [220, 214, 409, 405],
      modes: [[215, 0, 153], [414, -13, 472], [778, -14.3, 475]],
    },
    at: {
      30: { loudness: -26.6 },
      110: {
        attack: 4.025, timeToPeak: 1.988, t20: 79.41, t60: 433, t60Early: 299, t60Late: 561,
        crest: 15.9, flatness: -17.8, tonalToNoise: 0.41, loudness: -2.8,
        bands: [-40.1, -35.4, -18.7, -2, -10.1, -11.3, -12.7, -10.7, -14.2, -34.8],
        bandT60: [null, null, 93.8, 333, 587, 502, 299, 286, 311, null],
        centroid: [2685, 4139, 3257],
        modes: [[215, 0, 165], [324, -13.2, 554], [412, -13.4, 599], [778, -13.6, 592]],
      },
    },
  },
  {
    name: 'muted conga', kit: 'sticks', key: 62,
    figures: {
      attack: 3.825, timeToPeak: 2.391, t20: 42.59, t60: 214, t60Early: 203, t60Late: 234,
      crest: 15.6, flatness: -18, tonalToNoise: 2.9, loudness: -14.9,
      bands: [-33.8, -27, -26.8, -24, -13.3, -0.58, -12.8, -20.3, -22.6, -26.6],
      bandT60: [null, 525, 276, 260, 306, 220, 196, 221, 205, 206],
      centroid: [2072, 2115, 2473], body: [889, 882, 857, 591],
      modes: [[884, 0, 169], [802, -1.3, 135], [1141, -5.4, 259], [749, -8.6, 152]],
    },
    at: {
      30: { loudness: -29.6 },
      110: { loudness: -7 },
    },
  },
  {
    name: 'high conga', kit: 'sticks', key: 63,
    figures: {
      attack: 4.489, timeToPeak: 3.418, t20: 186, t60: 617, t60Early: 560, t60Late: 627,
      crest: 10.5, flatness: -25.2, tonalToNoise: 9.2, loudness: -9.6,
      bands: [-37.1, -31.9, -26.5, -1.1, -12.3, -8.2, -24.5, -23.7, -29.1, -37.9],
      bandT60: [null, null, 344, 593, 586, 287, 139, 128, 182, null],
      centroid: [1213, 549, 379], body: [292, 293, 293, 292],
      modes: [[292, 0, 588], [797, -11.1, 229], [536, -14.6, 597]],
    },
    at: {
      30: { loudness: -24.3 },
      110: { loudness: -1.7 },
    },
  },
  {
    name: 'low conga', kit: 'sticks', key: 64,
    figures: {
      attack: 6.971, timeToPeak: 6.545, t20: 93.76, t60: 514, t60Early: 532, t60Late: 497,
      crest: 8.7, flatness: -32.7, tonalToNoise: 8.9, loudness: -7.8,
      bands: [-43.2, -44.9, -22.9, -0.16, -17.3, -20.9, -26.8, -31, -31.6, -50.3],
      bandT60: [null, null, 382, 585, 838, 370, 290, null, null, null],
      centroid: [753, 515, 338], body: [262, 253, 261, 254],
      modes: [[259, 0, 569], [212, -5.8, 602]],
    },
    at: {
      30: { loudness: -22.5 },
      110: { loudness: 0.08 },
    },
  },
  {
    name: 'claves', kit: 'sticks', key: 75,
    figures: {
      attack: 3.665, timeToPeak: 1.983, t20: 19.24, t60: 95, t60Early: 58.35, t60Late: 154,
      crest: 16.6, flatness: -25.4, tonalToNoise: 12.2, loudness: -8.6,
      bands: [-48.7, -57.8, -51.9, -47.1, -50.7, -35.3, -0.03, -24.1, -24.8, -37],
      bandT60: [null, null, null, null, null, null, 64.17, 218, 67.71, null],
      centroid: [2510, 2976, null],
      modes: [[2159, 0, 57]],
    },
    at: {
      30: { loudness: -23.3 },
      110: { loudness: -0.7 },
    },
  },
  {
    name: 'soft kick', kit: 'brushes', key: 36,
    figures: {
      attack: 6.319, timeToPeak: 6.075, t20: 65.77, t60: 270, t60Early: 262, t60Late: 265,
      crest: 10.3, flatness: -39.7, tonalToNoise: 5.4, loudness: -8.4,
      bands: [-7.8, -2.4, -6.3, -20.7, -22.5, -30.5, -30.5, -33.1, -47.4, -71.8],
      bandT60: [302, 261, 174, 156, 117, null, null, null, null, null],
      centroid: [539, 167, 60.09], body: [52.25, 44.01, 40.5, 43.11],
      modes: [[45.4, 0, 281], [127, -5.3, 171], [91.8, -7.1, 122]],
    },
    at: {
      30: { loudness: -23.1 },
      110: {
        attack: 6.836, t20: 88.5, t60: 292, t60Early: 302, t60Late: 298,
        crest: 9.9, flatness: -36.2, tonalToNoise: 5, loudness: 0.07,
        bands: [-8, -2.4, -6.2, -19.3, -21.9, -29.9, -29.9, -32, -42.4, -66.6],
        bandT60: [331, 294, 191, 165, 125, 144, 89.7, null, null, null],
        centroid: [639, 182, 60.47],
        modes: [[45, 0, 313], [127, -4.9, 183], [92.3, -6.8, 132]],
      },
    },
  },
  {
    name: 'brush tap', kit: 'brushes', key: 38,
    figures: {
      attack: 6.236, timeToPeak: 7.685, t20: 71.74, t60: 291, t60Early: 257, t60Late: 390,
      crest: 16.1, flatness: -15.4, tonalToNoise: -0.63, loudness: -16.9,
      bands: [-34.4, -35.5, -12.5, -3.1, -7.4, -13.2, -12.9, -8.3, -15.7, -31.2],
      bandT60: [null, null, 246, 246, 303, 289, 266, 268, 285, null],
      centroid: [3369, 3480, 2967], body: [295, 293, 294, 198],
      modes: [[296, 0, 218], [218, -0.6, 291], [205, -1.9, 317], [236, -4.9, 288]],
    },
    at: {
      30: {
        attack: 8.163, timeToPeak: 7.491,
        loudness: -31.6,
      },
      110: {
        attack: 3.312, timeToPeak: 2.88, t20: 64.6, t60: 327, t60Early: 280, t60Late: 430,
        crest: 15.8, flatness: -13.3, tonalToNoise: -1.1, loudness: -7.3,
        bands: [-31.9, -27.3, -12.1, -3.1, -7.2, -13.8, -13.8, -8.9, -14.3, -26.8],
        bandT60: [null, 413, 258, 283, 338, 316, 298, 302, 321, 296],
        centroid: [3865, 3891, 3308],
        modes: [[297, 0, 241], [218, -0.5, 305], [205, -1.5, 318], [235, -4.7, 293]],
      },
    },
  },
  {
    name: 'brush slap', kit: 'brushes', key: 39,
    figures: {
      attack: 7.259, timeToPeak: 6.699, t20: 65.38, t60: 368, t60Early: 283, t60Late: 485,
      crest: 16, flatness: -20.1, tonalToNoise: 0.15, loudness: -14.7,
      bands: [-35.7, -23.4, -4.1, -6.2, -11.9, -12.7, -11.7, -8.7, -13.5, -40.5],
      bandT60: [null, 192, 240, 281, 405, 369, 378, 318, 289, null],
      centroid: [2888, 3925, 3537], body: [169, 166, 468, 471],
      modes: [[166, 0, 223], [277, -5.4, 153], [469, -6.7, 438], [1008, -11.4, 150]],
    },
    at: {
      30: { loudness: -29.4 },
      110: {
        attack: 7.472, timeToPeak: 6.5, t20: 85.11, t60: 443, t60Early: 342, t60Late: 636,
        crest: 15.1, flatness: -17.5, tonalToNoise: -0.51, loudness: -5.7,
        bands: [-35.7, -23.4, -4.4, -6.8, -10.8, -12.8, -11.4, -8.2, -11.9, -36],
        bandT60: [null, 354, 276, 368, 466, 488, 491, 369, 349, null],
        centroid: [3172, 4271, 3833],
        modes: [[166, 0, 268], [278, -5.2, 166], [469, -5.7, 489], [1008, -11.3, 173]],
      },
    },
  },
  {
    name: 'brush swirl', kit: 'brushes', key: 40,
    figures: {
      attack: 9.012, timeToPeak: 9.197, t20: 158, t60: 542, t60Early: 728, t60Late: 533,
      crest: 14.8, flatness: -14.6, tonalToNoise: -3.7, loudness: -18.5,
      bands: [-22.6, -21.6, -15.1, -14.7, -6.8, -10.1, -5.9, -5.6, -12.2, -32.3],
      bandT60: [747, 700, 369, 664, 799, 773, 799, 756, 797, null],
      centroid: [3549, 3454, 3428],
      modes: [[595, 0, 763], [632, -0.7, 838], [924, -2.5, 752], [136, -3.2, 233]],
    },
    at: {
      30: { loudness: -33.2 },
      110: {
        attack: 10.12, t20: 225, t60: 574, t60Early: 1071, t60Late: 433,
        flatness: -12.3, tonalToNoise: -4.2, loudness: -9.5,
        bands: [-22.9, -21.8, -14.7, -14.8, -7.3, -10.2, -6.1, -5.5, -10.7, -27.8],
        bandT60: [853, 1240, 1025, 1221, 1029, 989, 1097, 1006, 1054, 940],
        centroid: [3937, 3789, 3805],
        modes: [[595, 0, 1035], [632, -0.8, 1047], [924, -2.5, 949], [136, -2.8, 663]],
      },
    },
  },
];
