import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { SWING_FILLS } from './fills';
import { swing } from './swing';

/**
 * Jump: swing in two, with a backbeat. Chords as in swing, but for the guitar, which answers off the beat: four to the
 * bar would double every note of the bass that walks under it (common practice, no source).
 */
export const jump = {
  limbs: 'jazz',
  drumming: {
    patterns: [
      [
        { hat: 'x. xo x. xo', stick: '. X . X', kick: 'x . x .' },
        { ride: 'x. xo x. xo', foot: '. x . x', stick: '. X . X', kick: 'x . x .' },
        { hat: 'x. xo x. xo', stick: '. X . X', kick: 'x . x o' },
        { ride: 'x. x. x. xo', foot: '. x . x', stick: '. X . X', kick: 'x . o .' },
      ],
      [
        { ride: 'x. Xo x. Xo', foot: '. x . x', snare: '. X . X', kick: 'x o x o' },
        { hat: 'x. Xo x. Xo', snare: '.. X. .? X.', kick: 'x . x .' },
        { ride: 'x. Xo x. Xo', foot: '. x . x', snare: '.? X. .. X.', kick: 'x . x .' },
        { hat: 'xo Xo xo Xo', snare: '.. X. .. X?', kick: 'x o x o' },
      ],
      [
        { ride: 'xo Xo xo Xo', foot: '. x . x', snare: '.? X. .? X?', kick: 'x x x x' },
        { ride: 'X. Xo X. Xo', foot: '. x . x', snare: '.. Xg .? X.', kick: 'x. x. x. x!' },
        { ride: 'xo X. xo X.', foot: '. x . x', snare: '.. X. .g Xg', kick: 'x. x. xo x.' },
        { ride: 'X. Xo X. Xo', foot: '. x . x', snare: '.g X. .? X.', kick: 'x . x .' },
      ],
    ],
    fills: SWING_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      ['two', ...riffs('R - 5 A', 'R - 3 5')],
      ['walk', ...riffs('R 3 5 6 | 8 6 5 3', 'R 3 5 6 | 7 6 5 3', 'R 3 5 3 | 8 6 5 A', 'R 6 5 3')],
      ['walk', ...riffs('R 3 5 6 | 8 6 5 A', 'R 3 5 6 | 8 7 5 A', 'R 5 8 A')],
    ],
    walksOut: true,
    turnaround: ['L L L L', 'L L L L', 'L L L L'],
  },
  comping: {
    ...swing.comping,
    bars: {
      ...swing.comping.bars,
      guitar: [
        ['.. s. .. s.', '.s .. .s ..', '.. .s .. .s', '.s .. .. s.', '.. s. .s ..'],
        [
          '.s .s .s .s',
          '.. .s .s s.',
          '.s .s .. S.',
          '.. S. .s .s',
          '.s .. .s Sp',
          '.s .s s. .s',
          's. .s .s ..',
        ],
        [
          '.. Ss .s Ss',
          '.s Ss .s S.',
          '.S .s .s Sp',
          '.s .S ss .S',
          '.s .s Sc S.',
          's. .S .s .S',
          '.S sc S. .s',
        ],
      ],
    },
  },
} as const satisfies Playing;
