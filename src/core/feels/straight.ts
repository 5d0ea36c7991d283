import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { EIGHTH_FILLS } from './fills';

/** Straight eighths. Drum figures: "Learn & Master Drums", session 6, and a 2015 survey of drum feels. */
export const straight = {
  limbs: 'rock',
  drumming: {
    patterns: [
      [
        { hat: 'xo xo xo xo', stick: '. X . X', kick: 'x. .. x. ..' },
        { hat: 'x x x x', stick: '. X . X', kick: 'x. .. xo ..' },
        { hat: 'xo xo xo xo', stick: '.. X. .. X.', kick: 'x. .. .x ..' },
        { hat: 'xo xo xo xo', stick: '. X . X', kick: 'x. .o x. ..' },
      ],
      [
        { hat: 'xo xo xo xo', snare: '. X . X', kick: 'x. .. xx ..' },
        { hat: 'xo xo xo xo', snare: '.. X. .? X.', kick: 'x. .x .x ..' },
        { hat: 'xo xo xo xo', snare: '.. X? .. X.', kick: 'x. .! x! ..' },
        { hat: 'xo xo xo xo', snare: '.. X. .. X?', kick: 'x. .x x. ..' },
        { hat: 'x x x x', snare: '.. X. .? X.', kick: 'x. .. xx .!' },
        { hat: 'xo xo xo xo', snare: '.? X. .. X.', kick: 'xx .. .x ..' },
      ],
      [
        { ride: 'xo Xo xo Xo', snare: '.. X? .? X?', kick: 'x. .x xx ..', foot: '. x . x' },
        { hat: 'xo xo xo x.', open: '.. .. .. .x', snare: '.. X. .? X.', kick: 'x. .x .x .!' },
        { ride: 'xo Xo xo Xo', snare: '.. X. ?g X.', kick: 'x. .x .x x.', foot: '. x . x' },
        { ride: 'xo Xo xo Xo', snare: '.? X? .. X?', kick: 'xx .x x. ..', foot: '. x . x' },
      ],
    ],
    fills: EIGHTH_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R- -- 5- -A', 'R- -R 5- --', 'R- -- -R 5-', 'R- -- -5 -A'),
      riffs('R- -R 5- 6A', 'R. .R R- 5A', 'R- -R -- 5-', 'R- -R 8- 7A', 'R- R. .5 -A', 'RR -R R- 5-'),
      riffs('RR .R RR .A', 'R- RR -R 6A', 'R- -R R- 5A', 'R- R8 -R 5A', 'R- -R RR -A', 'R- -8 7- 5A'),
    ],
    walksOut: false,
    turnaround: ['L- L- L- L-', 'L- Lr L- Lr', 'Lr L- Lr Lr'],
  },
  comping: {
    bars: {
      piano: [
        ['h. .. .. ..', '.. .s .. ..', 'h. .. .s ..', '.. s. .. .s', '.s .. .. s.', 'h. .. .. ..'],
        [
          's. .s .s ..',
          'h. .s .. s.',
          '.s .. .s ..',
          's. .. .s sp',
          '.s .. s. .s',
          '.. .s .s s.',
          'h. .. .s .s',
          '.s s. .s ..',
        ],
        ['ss ns ss ns', 'S. .S .n S.', 's. .s .S .p', '.s S. .s Ss', 'S. ns .s ns', '.s .S ss .p'],
      ],
      'electric-piano': [
        ['.. h. .. ..', 'h. .. .h ..', '.. .h .. ..', '.h .. .. .s', '.. s. .h ..', '.s .. .. h.'],
        [
          '.s .. .s h.',
          '.. s. .h ..',
          '.s .. h. .s',
          '.s s. .. s.',
          'h. .. s. .s',
          '.. .s h. .s',
          '.s h. .. .s',
          '.. s. .s s.',
          '.s s. .s ..',
          '.. s. .s .p',
        ],
        [
          '.s .. .S s.',
          's. .s .s .p',
          '.S .s s. .s',
          '.s S. .s .p',
          '.s s. .S s.',
          '.s .s Ss .s',
          '.. Ss .. S.',
          '.s S. Ss ..',
          '.s S. .s ..',
          '.S s. .S .p',
          '.. S. .s S.',
        ],
      ],
      organ: [
        ['h. .. .. ..', '.. h. .. ..', '.h .. .. ..', '.. .h .. ..'],
        [
          '.h .. .. .s',
          '.. h. .. ..',
          '.s .s .s .s',
          '.. .s .. .s',
          '.s .. .h ..',
          '.. s. .. s.',
          '.s h. .. ..',
        ],
        [
          '.S .S .S .S',
          '.h .s .S .p',
          '.s s. .S ..',
          '.s S. .s S.',
          '.S .. .S ss',
          '.. S. .S .S',
          '.. Ss .. Ss',
        ],
      ],
      guitar: [
        ['.. s. .. s.', 'h. .. .. ..', '.. s. .. .s', '.. s. .s ..'],
        [
          '.. S. .. S.',
          '55 66 55 66',
          's. .s .. S.',
          '.. Ss .. S.',
          '.s S. .s S.',
          '.. S. .s S.',
          '55 6s 55 6s',
          '.s .s .s .s',
        ],
        [
          '55 66 77 66',
          'Sn .s .S S.',
          '55 6S 55 6S',
          'S. nS .s Sp',
          '.s Ss .s Ss',
          '55 66 77 6S',
          'S. .S n. S.',
          '.. Ss .s Sp',
        ],
      ],
    },
    turnarounds: ['S. .s s. .p', 's. s. s. sp', '.s s. .s s.'],
    colour: 'plain',
    fullGuitar: false,
  },
} as const satisfies Playing;
