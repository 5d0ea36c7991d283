import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { TRIPLET_FILLS } from './fills';

/** Slow blues in twelve-eight. Drum figures: "How many shades of blue in blues drumming?". */
export const slow128 = {
  limbs: 'soul',
  drumming: {
    patterns: [
      [
        { hat: 'xoo xoo xoo xoo', stick: '. X . X', kick: 'x . x .' },
        { hat: 'xoo xoo xoo xoo', stick: '. X . X', kick: 'x.. ... x.? ...' },
        { hat: 'xoo xoo xoo xoo', stick: '... X.. ... X.?', kick: 'x.. ..o x.. ...' },
        { ride: 'xoo xoo xoo xoo', stick: '. X . X', kick: 'x . x .', foot: '. x . x' },
      ],
      [
        { hat: 'xoo Xoo xoo Xoo', snare: '... X.. ..? X..', kick: 'x.. ... x.o ...' },
        { ride: 'xoo Xoo xoo Xoo', snare: '... X.. ..? X..', kick: 'x.. ..o x.. ...', foot: '. x . x' },
        { hat: 'xoo Xoo xoo Xoo', snare: '... X.. ... X.?', kick: 'x.. ..o x.. ..?' },
        { ride: 'x.o Xoo x.o Xoo', snare: '..? X.. ... X..', kick: 'x.. ... x.o ...', foot: '. x . x' },
      ],
      [
        { ride: 'Xoo Xoo Xoo Xoo', snare: '..g X.. ..g X.?', kick: 'x.o ..o x.o ..!', foot: '. x . x' },
        { ride: 'Xoo Xoo Xoo Xoo', snare: '..? X.. .?g X.g', kick: 'x.o ... x.x ...', foot: '. x . x' },
        { ride: 'Xoo Xoo Xoo Xoo', snare: '... X.g .g. X.g', kick: 'x.o ..! x.. ..o', foot: '. x . x' },
        { hat: 'Xoo Xoo Xoo Xoo', snare: '..g X.. .gg X..', kick: 'x.. ..o x.o ..!' },
      ],
    ],
    fills: TRIPLET_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R-- --- 5-- --A', 'R-- --R 5-- ---', 'R-- --- 8-- 5--', 'R-- --5 8-- --A', 'R-- --- 5-- 3--'),
      [
        'walk',
        ...riffs(
          'R-- 3-- 5-- 6-A',
          'R-R --3 5-5 --A',
          'R-- --R 5-- 7--',
          'R-- 5-- 8-- 7--',
          'R-R 5-- 8-- 5-A',
          'R-- 3-R 5-- 6--',
        ),
      ],
      [
        'walk',
        ...riffs(
          'R-R 3-3 5-5 6-A',
          'R-- 3-3 5-- 6aA',
          'R-R 5-5 8-8 7-A',
          'R-- 3-6 5-3 6-A',
          'R-3 5-6 7-6 5-A',
        ),
      ],
    ],
    walksOut: true,
    turnaround: ['L-- L-- L-- L--', 'L-- L-r L-- L-r', 'L-r L-- L-r L-r'],
  },
  comping: {
    bars: {
      piano: [
        [
          'h.. ... ... ...',
          'h.. ..s h.. ...',
          'h.. ... ..s s..',
          '... ..s ..h ...',
          '..s h.. ... ...',
          'h.. ... ... ..s',
          '..h ... ..h ...',
        ],
        [
          'h.. ..s ..s s..',
          '..s s.. ..s s..',
          's.. ..s ..h ...',
          '.ss s.. .ss s..',
          's.. .ss s.. .ss',
          '..s ..s h.. ...',
          'h.. .ss s.. ...',
          '..s s.. ..s .ss',
          '..h ... .ss ...',
          '.ss ..h ... ..s',
        ],
        [
          'sss sss sss sss',
          '.ss S.. .ss S.s',
          '..s Sss ..s S.p',
          '.ss .ss .ss S.p',
          'Sss .ss Sss .ss',
          '..s S.s .ss S..',
        ],
      ],
      'electric-piano': [
        [
          'h.. ... ... ...',
          'h.. ... h.. ...',
          'h.. ... ... ..s',
          'h.. ... ..h ...',
          '..h ... ... ...',
          '..s ..h ... ...',
        ],
        [
          'h.. ... ..h ...',
          'h.. ..s h.. ..s',
          '..s h.. ..s h..',
          '..s h.. ... ..s',
          'h.. ... ..s s..',
          'h.. ... ..h ..s',
        ],
        ['.ss h.. .ss h..', 'h.s ..s h.s S..', 'h.s ..s S.. .ss', '.ss S.. h.. ..p'],
      ],
      organ: [
        ['h.. ... ... ...', 'h.. ... h.. ...', '..h ... ... ...', 'h.. ... ..h ...', '..h ... ..h ...'],
        [
          '..h ... ..h ...',
          '..h ... .ss ...',
          'h.. ..s h.. ...',
          'h.. ... ..s ...',
          '..h ... ... ..s',
          'h.. .ss h.. ...',
          'h.. .ss ..h ...',
        ],
        [
          'h.. ..c h.. .ss',
          'h.. S.. h.. ..s',
          '.ss h.. .ss ...',
          'h.. .ss h.. .ss',
          '.ss h.. ..s S..',
          '..h .ss ..h ..p',
          'h.. .ss ..h .n.',
        ],
      ],
      guitar: [
        ['... s.. ... s..', 'h.. ... ... s..', '... s.. ... ...', '..s s.. ... s..'],
        [
          '... S.. ... S.s',
          '..c S.. ..c S..',
          '..s s.. ..s s..',
          '... S.. ..c S..',
          '..s S.. ... S..',
          '... S.s ... S..',
        ],
        [
          '.ss S.. .ss S..',
          '..c Scs ..c Scs',
          '..s S.s ..s S.p',
          '..c S.s ..c S.p',
          '.ss S.. ..c S..',
          '..s Scs ..s S..',
        ],
      ],
    },
    turnarounds: ['h.. ..s h.. ..s', 'h.. .ss h.. ...', 'h.. ... h.. ..s', 'h.. .ss h.. .ss'],
    colour: 'rich',
    fullGuitar: false,
  },
} as const satisfies Playing;
