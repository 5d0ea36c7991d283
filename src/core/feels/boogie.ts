import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { TRIPLET_FILLS } from './fills';

/**
 * Boogie: eighths between straight and triplets over R 3 5 6 | b7 6 5 3 in the bass (studybass.com, "The boogie-woogie
 * blues pattern").
 */
export const boogie = {
  limbs: 'shuffle',
  drumming: {
    patterns: [
      [
        { hat: 'xo xo xo xo', stick: '. X . X', kick: 'o o o o' },
        { hat: 'xo xo xo xo', stick: '. X . X', kick: 'x . o .' },
      ],
      [
        { hat: 'xo Xo xo Xo', snare: '.. X. .. X?', kick: 'x x x x' },
        { ride: 'xo Xo xo Xo', snare: '.? X. .. X.', kick: 'x o x o', foot: '. x . x' },
        { hat: 'xo Xo xo Xo', snare: '.. X. .? X.', kick: 'x. x. x. xo' },
        { ride: 'xo Xo xo Xo', snare: '.. X. .g X.', kick: 'x . x .', foot: '. x . x' },
      ],
      [
        { ride: 'Xo Xo Xo Xo', snare: '.g X. .g X?', kick: 'x x x x', foot: '. x . x' },
        { ride: 'Xo Xo Xo Xo', snare: '.. Xg .? Xg', kick: 'x. x. x. x!', foot: '. x . x' },
        { hat: 'Xo Xo Xo Xo', snare: '.g X. .? Xx', kick: 'x. x! x. x.' },
        { ride: 'Xo Xo Xo Xo', snare: '.? Xg .g X.', kick: 'x o x o', foot: '. x . x' },
      ],
    ],
    fills: TRIPLET_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R 3 5 6 | 7 6 5 3', 'R 3 5 3 | 8 6 5 A'),
      riffs(
        'R 3 5 6 | 7 6 5 3',
        'RR 33 55 66 | 77 66 55 33',
        'R 3 5 6 | 8 6 5 3',
        'RR 33 55 66 | 88 66 55 3A',
      ),
      riffs('R^ 3^ 5^ 6^ | 7^ 6^ 5^ 3^', 'RR 33 55 66 | 77 66 55 3A', 'R^ R^ 5^ 6^'),
    ],
    walksOut: true,
    turnaround: ['L L L L', 'Lr Lr Lr Lr', 'Lr Lr Lr Lr'],
  },
  comping: {
    bars: {
      piano: [
        ['.. .s .. .s', 'h. .. .s s.', '.s .. .s ..', '.. s. .s ..', '.s .. .. s.', 'h. .. .. .s'],
        [
          '.s .s .. ss',
          's. ns s. .s',
          '.s ns .. .s',
          'ss .s ss ..',
          '.. s. .s s.',
          '.s s. .s s.',
          's. .s ns ..',
          '.. .s ss .s',
        ],
        [
          'ss ns ss ns',
          '.s ns .s ns',
          's. ss n. ss',
          'Ss .s Ss .p',
          '.s Ss .s Ss',
          'ns s. ns s.',
          '.s ss n. Ss',
          's. .S ns .p',
        ],
      ],
      'electric-piano': [
        ['h. .. .. ..', '.. .s .. .s', '.. .h .. ..', '.s .. .. .s'],
        ['.s .s .. h.', 's. .s .. ns', '.. s. .s s.', 'h. .s .. .s'],
        ['ss ns s. .s', '.s Sn .s Ss', '.s ss .s Ss', 'S. ns .s .p'],
      ],
      organ: [
        ['h. .. .. ..', 'h. .. .s .s', '.. .. h. ..', '.s .. .s ..'],
        ['.s .s .s .s', 'h. .. s. ns', '.. .s .s .s', '.s .. ns ..'],
        ['.S .s .S .s', '.s ns .s ns', 'Ss .s Ss .p', '.S .. .S ns', 'ss .s ss .s', '.s .S .s .p'],
      ],
      guitar: [
        ['.. s. .. s.', '55 66 55 66', '.. s. .. .s', '.s .s .. ..'],
        ['55 66 77 66', '55 66 55 66', '.s .s .s .s', '.. S. .. Ss', '55 6s 55 6s', '.s .. .s ss'],
        ['55 66 77 66', 'S. ns S. ns', '.S .s .S .s', '55 6S 77 6S', '.s Ss .s Ss', '.S .s nS .s'],
      ],
    },
    turnarounds: ['S. s. s. s.', '.s s. .s s.', 'ss .s ss .s'],
    colour: 'plain',
    fullGuitar: false,
  },
} as const satisfies Playing;
