import type { Playing } from './feel';
import { SWING_FILLS } from './fills';

/**
 * Swing: ratios fall with tempo (`swing.ts`), hi-hat on the backbeat under it (introduction of the ISMIR 2015
 * swing-ratio study), feathered kick; the chords' Charleston, 1 and the "and" of 2, is from memory.
 */
export const swing = {
  limbs: 'jazz',
  drumming: {
    patterns: [
      [
        { ride: 'x. xo x. xo', foot: '. x . x', kick: 'g g g g' },
        { ride: 'x. xo x. xo', foot: '. x . x', stick: '.. .. .. ?.', kick: 'g g g g' },
        { ride: 'x. xo x. x.', foot: '. x . x', kick: 'g g g g' },
        { hat: 'x. xo x. xo', stick: '. . . ?', kick: 'g . g .' },
      ],
      [
        { ride: 'x. Xo x. Xo', foot: '. x . x', snare: '.. .? .. .?', kick: 'g. g. g. g?' },
        { ride: 'x. Xo x. Xo', foot: '. x . x', snare: '.? .. .g ..', kick: 'g g g g' },
        { ride: 'x. Xo x. Xo', foot: '. x . x', stick: '. . . X', snare: '.. .? .. ..', kick: 'g g g g' },
        { ride: 'x. Xo x. X.', foot: '. x . x', snare: '.. .. .? o.', kick: 'g g g g' },
        { ride: 'xo X. xo X.', foot: '. x . x', snare: '.. .g .. .?', kick: 'g g g g' },
        { ride: 'x. Xo x. Xo', foot: '. x . x', snare: '.? .. .. .?', kick: 'g. g. .! g.' },
      ],
      [
        { ride: 'x. Xo x. Xo', foot: '. x . x', snare: '.? o. .? o?', kick: 'g. g! g. g.' },
        { ride: 'xo Xo xo Xo', foot: '. x . x', snare: '.. .g .g o.', kick: 'o. g. o. g!' },
        { ride: 'x. Xo xo X.', foot: '. x . x', snare: '.o .. .? o.', kick: 'g. .! g. g.' },
        { ride: 'x. Xo x. Xo', foot: '. x . x', snare: 'o. .g .o .?', kick: 'g. g. g! .o' },
      ],
    ],
    fills: SWING_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [['two'], ['walk'], ['walk']],
    walksOut: false,
    turnaround: ['L L L L', 'L L L L', 'L L L L'],
  },
  comping: {
    bars: {
      piano: [
        [
          's. .. .. ..',
          'h. .s .. ..',
          '.. .s .. ..',
          '.. .. .h ..',
          '.s .. .. ..',
          '.. s. .. .s',
          'h. .. .. .s',
          '.. .. .s s.',
        ],
        [
          'h. .s .. ..',
          '.s .. .s ..',
          '.. .s .. .p',
          's. .. s. .p',
          '.. s. .s ..',
          '.. .s .s ..',
          's. .s .. .s',
          '.s .. h. .p',
          '.. .s s. ..',
          '.s .s .. ..',
        ],
        [
          'S. .s .. .p',
          '.s .. Ss ..',
          '.s .s .. Sp',
          's. .S .. s.',
          '.s Ss .. .p',
          'S. .. .s Ss',
          '.s .. .S .p',
          's. .s .s .p',
        ],
      ],
      'electric-piano': [
        ['h. .. .. ..', 'h. .h .. ..', '.. .h .. ..', '.. .h .. .s', '.h .. .. ..', 'h. .. .. .h'],
        ['h. .h .. ..', 'h. .s .. .p', '.s .. h. ..', '.s .. .h ..', '.. .s h. .p', 'h. .. .s ..'],
        ['s. .h .. .p', 'S. .s .. Sp', '.h .. .s ..', '.s .S .. .p', 'h. .s Ss ..', 'S. .. .s .p'],
      ],
      organ: [
        ['h. .. .. ..', 'h. .. h. ..', '.. .. h. ..', '.h .. .. ..'],
        ['h. .. .s ..', '.s .. .s ..', 'h. .s .. .s', 'h. .. .. .p', '.. .s .s ..', '.s .. h. ..'],
        ['s. .s .. .S', '.S .. .S ..', 'h. .. .S .p', '.s .. Ss .p', 'S. .s .. .p'],
      ],
      guitar: [
        ['.. s. .. s.', 's. .. s. ..', 's. s. s. s.', '.. s. s. s.'],
        ['s. S. s. S.', 's. S. s. Sp', '.. S. .. S.', 's. S. s. Ss', 's. S. .s S.', 's. .s s. S.'],
        ['s. S. s. S.', 's. Sc s. S.', 's. S. .s Sp', 's. S. sc S.', '.s S. s. Sp', 's. Ss s. S.'],
      ],
    },
    turnarounds: ['S. .s s. .p', 's. .. s. .s', '.s s. .s s.'],
    colour: 'rich',
    fullGuitar: true,
  },
} as const satisfies Playing;
