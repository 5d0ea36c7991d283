import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { MARCH_FILLS } from './fills';

/** The train: sixteenths by both hands without a pause ("Vital beats every drummer must know", Drum!). */
export const train = {
  limbs: 'rock',
  drumming: {
    patterns: [
      [
        { snare: 'ggog ggog ggog ggog', kick: 'o . o .' },
        { snare: 'oggg oggg oggg ogog', kick: 'o . o .' },
      ],
      [
        { snare: 'ogxg ogXg ogxg ogXg', kick: 'x o x o' },
        { snare: 'ggxg ggXg ggxg gxgX', kick: 'x o x o' },
        { snare: 'ogxg ggXg ogxg ggXg', kick: 'x o x o' },
        { snare: 'ggxg ogXg gxgg ogXg', kick: 'x . x .' },
      ],
      [
        { snare: 'ogxo ogXo ogxo ogXx', kick: 'x x x x' },
        { snare: 'ogxg oxgX ogxg oxXg', kick: 'x o x o' },
        { snare: 'ogxo ggXo ogxo xgXg', kick: 'x o x x' },
        { snare: 'oxgg oxXg oxgg ogXx', kick: 'x x x x' },
      ],
    ],
    fills: MARCH_FILLS,
    sweeps: false,
  },
  bassLine: {
    patterns: [
      riffs('R - b -', 'R - 5 -'),
      riffs('R b R b', 'R b 3 5', 'R b R A', 'R 5 R b'),
      riffs('R b R A', 'RR b. RR bA', 'R b 3 A', 'RR b- RR b-', 'R bb R bA'),
    ],
    walksOut: true,
    turnaround: ['L L L L', 'L L L L', 'Lr L Lr L'],
  },
  comping: {
    bars: {
      piano: [
        ['.s .s .s .s', '.. .s .. .s', '.s .. .s ..', '.. .s .. ..'],
        ['.s .s .s .s', '.s .s .s ss', '.s .. .s .s', '.s ..ss .. .s'],
        ['.S .s .S .s', '.s ..ss .s .s', '.S .s .S ..ss', '..ss .s ..ss .s'],
      ],
      'electric-piano': [
        ['h. .. .. ..', '.. .s .. .s', '.. .h .. ..', '.s .. .s ..'],
        ['.s .s .s .s', 'h. .s .. .s', '.s .. .s .s', '.. .s h. .s'],
        ['.S .s .S .s', '.s .s .s sp', '.S .. .S .s', '.s .S .s .p'],
      ],
      organ: [
        ['h. .. .. ..', '.. .. h. ..'],
        ['.s .s .s .s', 'h. .. h. ..', '.s .. .s .s', '.. .s .. .s'],
        ['.S .s .S .s', 'h. .s .S .s', '.S .. .S .s', '.s .S .s .p'],
      ],
      guitar: [
        ['.s .s .s .s', '.. .s .. .s', '.s .. .s .s', '.. .s .. ..ss'],
        [
          '.s .s .s .s',
          '.S ..ss .S ..ss',
          '.s .s .s ..ss',
          '.s ..ss .s .s',
          '.S .s .S .s',
          '..ss .s ..ss .s',
        ],
        [
          '..ss ..ss ..ss ..ss',
          '.S .s .S ..ss',
          '..Ss ..Ss ..Ss ..Ss',
          '.S ..ss .s ..ss',
          '..Ss .s ..Ss .s',
          '.s ..Ss .s ..Ss',
        ],
      ],
    },
    turnarounds: ['.s .s .s .s', '.S .s .S ..ss'],
    colour: 'plain',
    fullGuitar: false,
  },
} as const satisfies Playing;
