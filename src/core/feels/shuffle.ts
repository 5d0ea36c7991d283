import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { TRIPLET_FILLS } from './fills';

/**
 * The shuffle: triplets with the middle note left out, 2 : 1, and the same ratio at any tempo (de Haas & Honing, SMPC
 * 2007: a shuffle groove scales proportionally). Ratio and drum figures: "Learn & Master Drums", session 6, and a
 * 2015 survey of drum feels.
 */
export const shuffle = {
  limbs: 'shuffle',
  drumming: {
    patterns: [
      [
        { hat: 'xo xo xo xo', stick: '. X . X', kick: 'x . x .' },
        { hat: 'xo xo xo xo', stick: '. X . X', kick: 'o o o o' },
        { hat: 'x. xo x. xo', stick: '. X . X', kick: 'x . x .' },
        { hat: 'xo xo xo xo', stick: '.. X. .. X?', kick: 'x. .. o. .?' },
      ],
      [
        { hat: 'xo Xo xo Xo', snare: '.. X. .? X?', kick: 'x o x o' },
        { hat: 'xo Xo xo Xo', snare: '.? X. .? X.', kick: 'x. .. x! ..' },
        { ride: 'xo Xo xo Xo', snare: '.. X? .. X.', kick: 'x o x o', foot: '. x . x' },
        { hat: 'xo Xo xo Xo', snare: '.? X. .. X.', kick: 'x. .o x. ..' },
        { ride: 'x. Xo x. Xo', snare: '.. X. .? X.', kick: 'x o x o', foot: '. x . x' },
        { hat: 'xo Xo xo Xo', snare: '..g X.. ..g X..', kick: 'x o x o' },
      ],
      [
        { ride: 'Xo Xo Xo Xo', snare: '.g Xg .g X?', kick: 'x. x. xo x.', foot: '. x . x' },
        { ride: 'Xo Xo Xo Xo', snare: '.? Xg .? Xg', kick: 'X. x. x! x!', foot: '. x . x' },
        { ride: 'Xo Xo Xo Xo', snare: '..g X.. ?.g X.g', kick: 'x. x. x. xo', foot: '. x . x' },
        { hat: 'Xo Xo Xo Xo', snare: '.g X. .g Xx', kick: 'x. xo x. x.' },
      ],
    ],
    fills: TRIPLET_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      ['two', ...riffs('R - 5 A', 'R -- 3 5', 'R - 5 -', 'R 5 8 A', 'R - 3 5', 'R -R 5 A')],
      [
        'walk',
        ...riffs(
          'R 3 5 6 | 7 6 5 3',
          'R R 3 5',
          'R 8 5 A',
          'R 3 5 6 | 8 6 5 A',
          'R 5 7 8 | 7 5 3 A',
          'R -R 3 5',
          'R 3 5 3',
        ),
      ],
      [
        'walk',
        ...riffs('RR 33 55 66 | 77 66 55 3A', 'RR 33 55 6A', 'RR 55 88 77', 'R3 5R 35 6A', 'RR 33 5- 6A'),
      ],
    ],
    walksOut: true,
    turnaround: ['L L L L', 'L L L L', 'Lr Lr Lr Lr'],
  },
  comping: {
    bars: {
      piano: [
        [
          '.. .s .. ..',
          '.. .s .. .s',
          'h. .. .. .s',
          '.. .. .s s.',
          '.. .s .. s.',
          's. .s .. ..',
          '.. s. .. .s',
          '.s .. .. .s',
        ],
        [
          '.s .s .. .s',
          '.. Ss .. .s',
          's. .s .. Ss',
          '.s .. .s .p',
          'h. .s .. s.',
          '.s .. Ss .s',
          's. .. .s .s',
          '.s s. .s .p',
          '.. .s s. .s',
          'h. .. .s .s',
        ],
        [
          '.s .s .s .s',
          '55 66 55 6S',
          'S. .s .s Sp',
          '.s ns .s ns',
          'sn s. sn s.',
          'S. ss .s Ss',
          '.s Ss .s .p',
          '55 66 77 66',
          'ss .s Ss .s',
          '.s .S ns .s',
        ],
      ],
      'electric-piano': [
        ['h. .. .. ..', 'h. .. .h ..', '.. .h .. ..', 'h. .. .. .s', '.. .. h. ..', '.h .. .. ..'],
        ['h. .s .. .s', '.s .. h. ..', 'h. .. .s .p', '.h .. .s ..', 'h. .. .s .s', '.. .s h. .p'],
        ['s. .s h. .s', '.s .s .s .p', 'S. .s .. Ss', '.s .S .. Ss', 'S. .h .s .p', 'h. .s Ss .s'],
      ],
      organ: [
        ['h. .. .. ..', 'h. .. .. ..', '.. h. .. ..', '.. .. h. ..', 'h. .. .. .s', '.h .. .. ..'],
        ['h. .. h. .s', '.s .s .s .s', 'h. .. .s .s', 'h. .s .. .s', '.. .s .s .s', '.s .. h. ..'],
        ['.S .s .S .s', 'h. .n s. .s', '.s ns .s ns', '.s Ss .s .p', 'h. .s .S .s', 'S. .s ns .s'],
      ],
      guitar: [
        ['.. s. .. s.', '.. S. .. .s', '.. s. .s ..', '.. s. .. ..', '.s .. .s ..', '.. .s .. s.'],
        [
          '55 66 55 66',
          '.. S. .. Ss',
          '.s .s .s .s',
          '55 66 77 66',
          '.. Ss .. S.',
          '.s .. .s .p',
          '55 6s 55 6s',
          '.. S. .s .s',
        ],
        [
          '55 66 77 66',
          '.S .s .S .s',
          '55 6S 55 6S',
          '.. Sc S. Sp',
          'S. ns S. ns',
          '.s S. .s Sp',
          '55 66 7S 66',
          'S. .s ns .s',
          '.S .. .S Ss',
          '.. S. cS .s',
        ],
      ],
    },
    turnarounds: ['S. s. s. s.', 's. .s s. .s', 'S. s. sc S.'],
    colour: 'plain',
    fullGuitar: false,
  },
} as const satisfies Playing;
