import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { TRIPLET_FILLS } from './fills';
import { shuffle } from './shuffle';

/**
 * The double shuffle: the snare shuffles throughout, accents on 2 and 4 (an introductory drum course's lesson on
 * shuffles). Chords as in the shuffle.
 */
export const doubleShuffle = {
  limbs: 'shuffle',
  drumming: {
    patterns: [
      [
        { hat: 'xo xo xo xo', snare: 'gg og gg og', kick: 'x . x .' },
        { hat: 'xo xo xo xo', snare: 'gg og gg oo', kick: 'x. .. x. .?' },
      ],
      [
        { hat: 'xo xo xo xo', snare: 'go Xo go Xo', kick: 'x . x .' },
        { ride: 'xo xo xo xo', snare: 'go Xo go Xo', kick: 'x. .. x! ..', foot: '. x . x' },
        { hat: 'xo xo xo xo', snare: 'go Xo gg Xo', kick: 'x o x o' },
        { ride: 'xo xo xo xo', snare: 'gg Xo go Xg', kick: 'x . x .', foot: '. x . x' },
      ],
      [
        { ride: 'Xo Xo Xo Xo', snare: 'oo Xo oo Xo', kick: 'x o x o', foot: '. x . x' },
        { ride: 'Xo Xo Xo Xo', snare: 'go Xo go Xo', kick: 'x. x. xo x.', foot: '. x . x' },
        { ride: 'Xo Xo Xo Xo', snare: 'og Xo oo Xx', kick: 'x. xo x. ..', foot: '. x . x' },
        { hat: 'Xo Xo Xo Xo', snare: 'oo Xo go Xo', kick: 'x o x x' },
      ],
    ],
    fills: TRIPLET_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R 3 5 6 | 7 6 5 3', 'R R 5 6', 'R 5 8 5', 'R 3 5 A'),
      riffs('RR 33 55 66 | 77 66 55 33', 'RR RR 55 66', 'RR 33 55 6A', 'RR 55 77 55'),
      riffs(
        'RR 33 55 66 | 77 66 55 3A',
        'RR RR 55 6A',
        'RR 88 55 6A',
        'RR 88 77 5A',
        'R3 56 55 3A',
        'RR 33 5R 6A',
      ),
    ],
    walksOut: true,
    turnaround: ['L L L L', 'Lr Lr Lr Lr', 'Lr Lr Lr Lr'],
  },
  comping: shuffle.comping,
} as const satisfies Playing;
