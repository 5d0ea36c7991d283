import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { TRIPLET_FILLS } from './fills';
import { slow128 } from './slow-12-8';

/**
 * Slow drag: a slow four over triplets, which goes into a double time of swung sixteenths as it fills up, while the
 * chords keep their bars (common practice, no source). Chords as in the slow twelve-eight until the double time.
 */
export const slowDrag = {
  limbs: 'soul',
  drumming: {
    patterns: [
      [
        { hat: 'x.o x.o x.o x.o', stick: '. X . X', kick: 'x.. ... x.. ..o' },
        { ride: 'x.o x.o x.o x.o', stick: '. X . X', kick: 'x . x .', foot: '. x . x' },
        { hat: 'xoo x.o xoo x.o', stick: '. X . X', kick: 'x . x .' },
      ],
      [
        {
          ride: 'x...o. x...o. x...o. x...o.',
          snare: '...... X....g ..g... X....g',
          kick: 'x..... .....o x..... ......',
          foot: '. x . x',
        },
        { hat: 'x.o x.o x.o x.o', snare: '...... X..... .....g X.....', kick: 'x . x .?', foot: '. x . x' },
        { ride: 'x.xo x... x.xo x...', snare: '.... X..g .... X...', kick: 'x . x .', foot: '. x . x' },
        { hat: 'x.xo x.xo x.xo x.xo', snare: '.... X..? .... X..g', kick: 'x... ...o x... ....' },
      ],
      [
        {
          ride: 'x.Xo x.Xo x.Xo x.Xo',
          snare: '..X. ..X? ..X. ..X?',
          kick: 'x... x... x... x..!',
          foot: '.x .x .x .x',
        },
        {
          ride: 'x.Xo x.Xo x.Xo x.Xo',
          snare: '.gX. ..Xg .gX. ..Xg',
          kick: 'x... x... x..o x...',
          foot: '.x .x .x .x',
        },
        { hat: 'xoXo xoXo xoXo xoXo', snare: '..X. .?X. ..X. ..Xg', kick: 'x.o. x.o. x.o. x.o.' },
      ],
    ],
    fills: TRIPLET_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R - 5 -', 'R - 8 -', 'R - 5 A', 'R -- 5 -A'),
      ['walk', ...riffs('R -R 5 A', 'R 3 5 6', 'R 5 8 7', 'R --A 5 7A')],
      riffs('R3 56 87 5A', 'R3 56 86 5A', 'R5 87 53 RA', 'RR 33 55 6A', 'R3 5R 35 6A'),
    ],
    walksOut: true,
    turnaround: ['L L L L', 'L L L L', 'Lr Lr Lr Lr'],
  },
  comping: {
    ...slow128.comping,
    bars: {
      piano: [
        slow128.comping.bars.piano[0],
        slow128.comping.bars.piano[1],
        [
          '..s. ..s. ..s. ..s.',
          '...s ..S. ...s ..S.',
          's..s ..s. .... ..S.',
          '..sS .... ..sS ..s.',
          '..s. .s.s ..s. ..Sp',
        ],
      ],
      'electric-piano': [
        slow128.comping.bars['electric-piano'][0],
        slow128.comping.bars['electric-piano'][1],
        ['h... ..s. h... ..s.', '..s. ..S. ...s h...', '..s. .s.s ..S. ....', '...s ..S. .... ..sp'],
      ],
      organ: [
        slow128.comping.bars.organ[0],
        slow128.comping.bars.organ[1],
        ['h... .... h... ..s.', '..s. ..s. ..S. ..s.', '..S. .... ..Ss h...', 'h... ..s. ..S. ....'],
      ],
      guitar: [
        slow128.comping.bars.guitar[0],
        slow128.comping.bars.guitar[1],
        ['..s. ..s. ..s. ..s.', '..S. ..s. ..S. .cS.', '..s. ..Ss ..s. ..Ss', '..S. ..s. ..Ss ..s.'],
      ],
    },
  },
} as const satisfies Playing;
