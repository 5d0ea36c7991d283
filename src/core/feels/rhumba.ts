import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { EIGHTH_FILLS } from './fills';

/**
 * Rhumba blues: steady eighths with the backbeat kept ("Blues rumba", Drum!), 3+3+2 in the bass ("12 Bar Blues, Part
 * 2", ACEMM). Bass, kick and chords have three figures that interlock; the kick on the last sixteenth of 1, the "and" of 2 and
 * the last sixteenth of 3 under the clave on the cross-stick is a drummer's of the Groove MIDI Dataset (one take, 110
 * bpm).
 */
export const rhumba = {
  limbs: 'rock',
  drumming: {
    patterns: [
      [
        { hat: 'xo xo xo xo', stick: '.. X. .. X.', kick: 'x. .. .o ..' },
        { hat: 'xo xo xo xo', stick: '.. X. .. X.', kick: 'x. .. o. .o' },
      ],
      [
        { hat: 'xo xo xo xo', stick: '.. X. .. X.', kick: 'x. .. .x ..', high: '.. .. .. .o' },
        { hat: 'xo xo xo xo', stick: '.. X. .. X.', kick: 'x. .. .x .!', high: '.. .. .. xx' },
        { hat: 'xo xo xo xo', stick: 'x..x ...x ..x. x...', kick: '...x ..x. ...x ....' },
        { hat: 'xo xo xo xo', stick: '.. X. .. X.', kick: 'x. .o .x ..', low: '.. .. .. .o' },
      ],
      [
        {
          ride: 'xo xo xo xo',
          snare: '.. X. .. X.',
          kick: 'x. .. .x ..',
          high: '.. .. .. .x',
          low: '.. .. x. ..',
        },
        {
          bell: 'x. x. x. x.',
          snare: '.. X. .? X.',
          kick: 'x. .. .x x.',
          high: '.. .? .. xx',
          foot: '. x . x',
        },
        {
          bell: 'x. x. x. x.',
          snare: '.. X. .. X.',
          kick: '...x ..x. ...x ....',
          high: '.. .. .. x.',
          foot: '. x . x',
        },
        { ride: 'xo xo xo xo', snare: '.. X. .? X.', kick: 'xx .. .x ..', low: '.. .. .. .x' },
      ],
    ],
    fills: EIGHTH_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R- -- -- 5-', 'R- -3 -- 5-', 'R- -5 -- 8-', 'R- -- -5 8-'),
      riffs('R- -3 -- 5-', 'R- -5 -- 8-', 'R- -3 5- 6-', 'R- -8 -- 5-'),
      riffs('R- -5 8- 5-', 'R- -3 5- 3A', 'R- -5 8- 7A', 'R- -3 5- 8A'),
    ],
    walksOut: false,
    turnaround: ['L- -L L- L-', 'L- -L L- L-', 'L- -L L- Lr'],
  },
  comping: {
    bars: {
      piano: [
        ['s. .s .. ..', '.. .. s. .s', '.s .. .s ..', '.. .s s. ..', '.s .. s. ..', '.s .. .. .s'],
        [
          '.s .s s. .s',
          's. .s .s s.',
          '.. .s s. .s',
          '.s .s .s .s',
          '.s .. s. .s',
          '.s .. ss .s',
          '.s s. s. .s',
          '.. .s ss ..',
        ],
        [
          's. .S .s Ss',
          '.S .s S. .s',
          'S. .S s. S.',
          '.s .S ss .S',
          'S. ss .s S.',
          '.S .s .S ss',
          '.S s. S. .s',
          's. .s S. .S',
        ],
      ],
      'electric-piano': [
        ['h. .h .. ..', 'h. .. .. s.', '.h .. .. s.', '.. h. .. ..'],
        [
          's. .s .. s.',
          'h. .s .. s.',
          '.s .. s. .s',
          '.s s. .s ..',
          '.. .s s. .s',
          '.s .. h. ..',
          '.s .. ss ..',
        ],
        ['s. .S .s S.', '.s .S s. .S', '.S .s .S s.', '.S .. Ss .s', '.. .s S. Ss'],
      ],
      organ: [
        ['h. .. .. ..', 'h. .. .. s.', '.. .. h. ..', '.. h. .. s.'],
        ['h. .s .. s.', '.s .. s. .s', 'h. .. .s .s', '.. .s s. ..', '.s .s s. ..', 'h. .. .. .s'],
        ['s. .S .. S.', '.S .s .S Ss', '.S .. S. .s', '.s .S s. .S'],
      ],
      guitar: [
        ['.. s. .. s.', 's. .s .. ..', '.. .. s. .s', '.s .. .s ..', '.s .. s. ..'],
        ['.. S. .. Ss', '.s .. S. .s', '.s .s S. ..', '.s .s .s .s', '.s s. s. .S', '.. .s s. .S'],
        ['s. .S .. S.', '.s .S s. .S', 's. .S .s S.', '.S .s .S ss', '.S .. Ss .s', '.s S. s. .S'],
      ],
    },
    turnarounds: ['.s s. s. .s', 's. .s s. s.', '.s .s s. .s'],
    colour: 'plain',
    fullGuitar: false,
  },
} as const satisfies Playing;
