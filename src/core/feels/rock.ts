import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { EIGHTH_FILLS } from './fills';

/**
 * Straight rock. Bass and hat fill every eighth, so the chords ring over bars and halves of bars, push ahead of the beat,
 * or strike the backbeats alone; the riff of two notes is for a phrase now and then (common practice, no source).
 */
export const rock = {
  limbs: 'rock',
  drumming: {
    patterns: [
      [
        { hat: 'xo xo xo xo', stick: '. X . X', kick: 'x. .. x. ..' },
        { hat: 'xo xo xo xo', stick: '. X . X', kick: 'x. .. .x ..' },
      ],
      [
        { hat: 'Xx Xx Xx Xx', snare: '. X . X', kick: 'x. .. xx ..' },
        { hat: 'Xx Xx Xx Xx', snare: '.. X. .? X.', kick: 'x. .x .x .!' },
        { hat: 'Xx Xx Xx Xx', snare: '.. X. .. X?', kick: 'xx .. x. ..' },
        { hat: 'Xx Xx Xx Xx', snare: '. X . X', kick: 'x. .x xx ..' },
      ],
      [
        { open: 'x x x x', snare: '. X . X', kick: 'xx .. xx .!' },
        { ride: 'Xx Xx Xx Xx', snare: '.? X. .? X.', kick: 'x. .x xx ..' },
        { ride: 'Xx Xx Xx Xx', snare: '.. X. .g X.', kick: 'xx .x .x ..' },
        { open: 'x x x x', snare: '.. X. .. Xx', kick: 'x. .x xx ..' },
      ],
    ],
    fills: EIGHTH_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R- -- R- -A', 'R- -- 5- --', 'R- -- RR --', 'R- -R -- 5-', 'R- -- -R 5-', 'R- -- 8- 5-'),
      riffs(
        'RR RR RR RA',
        'R- RR -R RA',
        'RR R- R- 5A',
        'R- -R R- -A',
        'R- -R -R 5-',
        'R- R8 -- 75',
        'R- -R R- 5-',
        'R. RR R. R5',
      ),
      riffs(
        'RR RR 55 77',
        'RR R8 55 RA',
        'RR 88 RR 5A',
        'RR RR 77 5A',
        'R- RR 8- 7A',
        'R- -R RR -A',
        'R. R8 R. 75',
        'R- R8 -R 7A',
      ),
    ],
    walksOut: false,
    turnaround: ['L- L- L- L-', 'L- Lr L- L-', 'Lr L- Lr Lr'],
  },
  comping: {
    bars: {
      piano: [
        ['h. .. .. ..', 'h. .. .. .s', '.. .h .. ..', '.. .. h. ..', '.s .. .. .s', 'h. .. .h ..'],
        [
          'h. .h .. .p',
          '.. .s .h ..',
          '.s .. .h ..',
          'h. .. .s .s',
          '.s .s .. .h',
          'h. .s .. .s',
          '.. S. .. .s',
          '.. .h .. ..',
        ],
        [
          'h. .h .. .p',
          'S. .S .h .p',
          '.S .h .. .S',
          'h. .S .. S.',
          '.s .S .s .p',
          'h. .s .S .p',
          '.. S. .h .S',
          '.s .h .s .S',
          '.S h. .. .s',
          '.h .. .s S.',
          '.. S. .s h.',
        ],
      ],
      'electric-piano': [
        ['h. .. .. ..', '.. h. .. ..', 'h. .. .h ..', '.. .h .. ..', '.h .. .. .s'],
        ['.h .. .. .s', 'h. .. .h ..', '.s .. .h ..', 'h. .s .. .p', '.. .s h. ..', '.. .h .. .s'],
        [
          '.S .h .. .S',
          'h. .S .h .p',
          '.s .S .h ..',
          'h. .h .s .p',
          'S. .h .. .S',
          '.S h. .. .s',
          '.h .. .s S.',
        ],
      ],
      organ: [
        ['h. .. .. ..', '.. h. .. ..', '.h .. .. ..', '.. .h .. ..'],
        ['h. .. .. ..', 'h. .h .. ..', '.s .h .. ..', '.h .. .. .s', '.. .s .h ..', 'h. .. .. .p'],
        [
          'h. .h .. .p',
          '.S .h .S .p',
          '.h .s .h .S',
          'h. .S .h ..',
          '.s .S .h .p',
          '.S h. .. .S',
          '.h .. S. ..',
        ],
      ],
      guitar: [
        ['h. .. .. ..', 'h. .. h. ..', '.. s. .. s.', '.. .h .. ..', 'h. .. .. .s', '.h .. .. ..'],
        [
          'h. .. .. ..',
          '.. S. .. S.',
          '55 66 55 66',
          'h. .h .. .p',
          '.. S. .h ..',
          'h. .. .h .s',
          '.. .s .h ..',
          '.s .h .. .s',
          'h. .s .. .h',
          '.h .. .. .s',
          '.s .. .h ..',
        ],
        [
          'h. .h .. .p',
          '55 66 77 66',
          'h. .S .h .p',
          '.. S. .h .S',
          'S. .h .s .S',
          '.S .h .. .p',
          '.s .S .h ..',
          'h. .. S. .p',
          '.S h. .. .s',
          '.. h. .. S.',
          '.h .. .. .S',
          '.. Ss .. h.',
        ],
      ],
    },
    turnarounds: ['h. .s h. .p', 's. .s s. .s', '.s .s .s .s'],
    colour: 'plain',
    fullGuitar: false,
  },
} as const satisfies Playing;
