import { riffs } from './bass-pattern';
import type { Feel } from './feel';
import { MARCH_FILLS } from './fills';

/** The train: sixteenths by both hands without a pause ("Vital beats every drummer must know", Drum!). */
export const train = {
  id: 'train',
  name: 'Train',
  meter: null,
  swing: 1,
  swungUnit: 'eighth',
  tempo: { low: 84, usual: 108, high: 132 },
  bass: 'upright-bass',
  chords: 'guitar',
  kit: 'brushes',
  drumming: {
    patterns: [
      [{ snare: 'ggog ggog ggog ggog', kick: 'o . o .' }],
      [
        { snare: 'ogxg ogXg ogxg ogXg', kick: 'x o x o' },
        { snare: 'ggxg ggXg ggxg gxgX', kick: 'x o x o' },
      ],
      [
        { snare: 'ogxo ogXo ogxo ogXx', kick: 'x x x x' },
        { snare: 'ogxg oxgX ogxg oxXg', kick: 'x o x o' },
      ],
    ],
    fills: MARCH_FILLS,
    sweeps: false,
  },
  bassLine: {
    patterns: [riffs('R - b -'), riffs('R b R b', 'R b 3 5'), riffs('R b R A', 'RR b. RR bA')],
    walksOut: true,
    turnaround: ['L L L L', 'L L L L', 'Lr L Lr L'],
  },
  comping: {
    bars: {
      piano: [
        ['.s .s .s .s', '.. .s .. .s'],
        ['.s .s .s .s', '.s .s .s ss'],
        ['.S .s .S .s', '.s ..ss .s .s'],
      ],
      'electric-piano': [
        ['h. .. .. ..', '.. .s .. .s'],
        ['.s .s .s .s', 'h. .s .. .s'],
        ['.S .s .S .s', '.s .s .s sp'],
      ],
      organ: [['h. .. .. ..'], ['.s .s .s .s', 'h. .. h. ..'], ['.S .s .S .s', 'h. .s .S .s']],
      guitar: [
        ['.s .s .s .s', '.. .s .. .s'],
        ['.s .s .s .s', '.S ..ss .S ..ss', '.s .s .s ..ss'],
        ['..ss ..ss ..ss ..ss', '.S .s .S ..ss', '..Ss ..Ss ..Ss ..Ss'],
      ],
    },
    turnarounds: ['.s .s .s .s', '.S .s .S ..ss'],
    colour: 'plain',
    fullGuitar: false,
  },
  turnarounds: ['plain', 'halves'],
} as const satisfies Feel;
