import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { TRIPLET_FILLS } from './fills';

/**
 * Boogie: eighths between straight and triplets over R 3 5 6 | b7 6 5 3 in the bass (studybass.com, "The boogie-woogie
 * blues pattern"). The left hand's eighths are the bass's here, so the right hand answers between the beats, in figures of
 * its own (after the first beat, across the middle of the bar, ahead of the next), or holds (common practice, no source).
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
      riffs(
        'R 3 5 6 | 7 6 5 3',
        'R 3 5 3 | 8 6 5 A',
        'R 6 5 3',
        'R 3 5 6 | 8 7 5 3',
        'R 8 5 6',
        'R 3 5 7 | 8 7 5 6',
      ),
      riffs(
        'R 3 5 6 | 7 6 5 3',
        'RR 33 55 66 | 77 66 55 33',
        'R 3 5 6 | 8 6 5 3',
        'R 3 55 6 | 8 6 55 3A',
        'R 6 5 3',
        'R 8 7 6 | 5 6 5 A',
        'R 3 5 66 | 7 6 5 33',
        'R 8 5 6',
        'RR 3 55 6',
      ),
      riffs(
        'R^ 3^ 5^ 6^ | 7^ 6^ 5^ 3^',
        'RR 33 55 66 | 77 66 55 3A',
        'R^ R^ 5^ 6^',
        'R 3 5 6 | 8 7 5 3',
        'R^ 5 R^ 6 | R^ 6 5 3',
        'R 33 5 66 | 8 77 5 66',
        'RR 8 55 6A',
      ),
    ],
    walksOut: true,
    turnaround: ['L L L L', 'Lr Lr Lr Lr', 'Lr Lr Lr Lr'],
  },
  comping: {
    bars: {
      piano: [
        ['.. .s .. .s', 'h. .. .. .s', '.s .. .s ..', '.. .s .h ..', '.s .. .. .s', '.h .. .. ..'],
        [
          '.s .s .. .s',
          's. .s .. .s',
          '.s .s .s ..',
          '.. .s .h ..',
          '.s .. .s .p',
          '.s .n s. .s',
          's. .s .n s.',
          '.. .s ss .s',
          '.s .h .. .s',
          '.s .s .h ..',
        ],
        [
          '.s .s .s .S',
          '.s .n s. .p',
          's. .S .s .p',
          '.S .s .S .p',
          '.s ss .S .s',
          '.s .S ns .p',
          '.s .ss .s .S',
          's. .S .n s.',
          '.S .h .. .S',
        ],
      ],
      'electric-piano': [
        ['h. .. .. ..', '.. .s .. .s', '.. .h .. ..', '.s .. .. .s'],
        ['.s .s .. .h', 's. .s .. .s', '.s .h .. ..', 'h. .s .. .s', '.s .. .s .p', '.s .n s. .s'],
        ['.s .S .s .p', '.s .n s. .S', '.S .s .h .p', 's. .S .s .S', '.s .h .. .S'],
      ],
      organ: [
        ['h. .. .. ..', 'h. .. .s .s', '.. .. h. ..', '.s .. .s ..'],
        ['.s .s .s .s', 'h. .. .h ..', '.. .s .s .s', '.s .. .h ..', 'h. .. .s .s', '.h .. .. .s'],
        ['.S .s .S .s', '.s .n h. .s', '.h .s .S .p', '.S .. .S .s', 'h. .s .S .p', '.s .S .s .p'],
      ],
      guitar: [
        ['.. s. .. s.', '55 66 55 66', '.. s. .. .s', '.s .s .. ..', '.s .. .. .s'],
        [
          '55 66 77 66',
          '.s .s .s .s',
          '.. S. .. .s',
          '.s .. .s .p',
          '.s .s .. .s',
          '.s .h .. .s',
          '.. .s .s .s',
        ],
        [
          '55 66 77 66',
          '.S .s .S .s',
          '55 6S 77 6S',
          '.s .S .s .S',
          '.S .s .S .p',
          '.s .h .. .S',
          '.S .. .S .s',
        ],
      ],
    },
    turnarounds: ['S. .s s. .s', '.s .s .s .s', 's. .s .s .S'],
    colour: 'plain',
    fullGuitar: false,
  },
} as const satisfies Playing;
