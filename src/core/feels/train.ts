import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { MARCH_FILLS } from './fills';

/**
 * The train: sixteenths by both hands without a pause ("Vital beats every drummer must know", Drum!), accents on the
 * off-beats of 2 and 4 or on the backbeats themselves. The chick of the chords falls between the notes of the bass, and
 * where the snare has its accents there, they ring from the off-beat on, push by a sixteenth, or leave every other one out
 * (common practice, no source).
 */
export const train = {
  limbs: 'rock',
  drumming: {
    patterns: [
      [
        { snare: 'ggog ggog ggog ggog', kick: 'o . o .' },
        { snare: 'oggg oggg oggg ogog', kick: 'o. .? o. ..' },
        { snare: 'gggg oggg gggg oggo', kick: 'o. .. o. .?' },
        { snare: 'ggog g?og ggog ?gog', kick: 'o . o .' },
      ],
      [
        { snare: 'ogog ogXg ogog ogXg', kick: 'x. o. x. o?' },
        { snare: 'gggg Xgog gggg Xgo? | gggo Xggg g?gg Xgog', kick: 'x. .. x. .!' },
        { snare: 'ggog ggXg ggog gxgX', kick: 'x. o. x. o.' },
        { snare: 'oggo ggXg oggo g?Xg', kick: 'x. .? x. .?' },
        { snare: 'ogog Xgog ogog X?oo', kick: 'x. .. x. .!' },
        { snare: 'ggxg ogXg gxgg ogXg | ggog ?gXg gxgg ogXo', kick: 'x. .. x. .?' },
      ],
      [
        { snare: 'ogxo ogXo ogoo ogXx', kick: 'x. x. x. x!' },
        { snare: 'ogog XgoX ogog Xg!g', kick: 'x. x! x. x.' },
        { snare: 'ogog oxgX ogog oxX?', kick: 'x. o! x. o.' },
        { snare: 'oogo Xgoo oogo XxoX | oogo Xggo oxoo Xgo!', kick: 'x. .! x. x.' },
        { snare: 'oxgg ogXo oxgg ogXx', kick: 'x. x. x. x!' },
        { snare: 'oggo XgXg oggo xgXg', kick: 'x. .! x. .!' },
      ],
    ],
    fills: MARCH_FILLS,
    sweeps: false,
  },
  bassLine: {
    patterns: [
      riffs('R - b -', 'R - 5 -', 'R - b 5', 'R - 8 -', 'R - 3 5'),
      riffs('R b R b', 'R b 3 5', 'R b R A', 'R 5 R b', 'R b 5 6', 'R 5 3 b', 'R b R 35', 'R 3 5 6'),
      riffs(
        'R b R A',
        'RR b. RR bA',
        'R b 3 A',
        'RR b- RR b-',
        'R bb R bA',
        'R 5 8 5',
        'R b 35 6A',
        'R 3 5 6',
        'RR 5 3 bA',
      ),
    ],
    walksOut: true,
    turnaround: ['L L L L', 'L L L L', 'Lr L Lr L'],
  },
  comping: {
    bars: {
      piano: [
        ['.s .s .s .s', '.. .s .. .s', '.s .. .s ..', '.. .s .. ..', '.h .. .. ..', 'h. .. .. .s'],
        [
          '.s .s .s .s',
          '.h .. .s ..',
          '.s .. .s .s',
          '.s ...s .. .s',
          '...s .s ...s ..',
          'h. .. .. .s',
          '.. ...s s. .s',
          '.s .h .. ..',
        ],
        [
          '.S .s .S .s',
          '.s ..ss .s .s',
          '...S .s ...S .p',
          '.S ...s .s ...s',
          '.h .S .h .S',
          's..s ..s. .. .S',
          '.S .h .. .p',
        ],
      ],
      'electric-piano': [
        ['h. .. .. ..', '.. .s .. .s', '.. .h .. ..', '.s .. .s ..', '.h .. .. ..'],
        ['.s .s .s .s', 'h. .s .. .s', '.h .. .h ..', '...s .h .. ..', '.. .s h. .s', '.h .. ...s ..'],
        ['.S .s .S .s', '.h .S .h .p', '...S .h ...s .p', '.S .. .h .s', 's..s .h .. .S'],
      ],
      organ: [
        ['h. .. .. ..', '.. .. h. ..', '.h .. .. ..'],
        ['.s .s .s .s', 'h. .. h. ..', '.h .. .. .s', '.h .. .h ..', '...s .h .. ..', 'h. .. .. ..'],
        ['.S .s .S .s', 'h. .s .S .s', '.h .S .h .p', '.S .h .. .p', '...S .h .. .S'],
      ],
      guitar: [
        ['.s .s .s .s', '.. .s .. .s', '.s .. .s .s', '.. .s .. ..ss', '.h .. .h ..', '.s .. .. ..'],
        [
          '.s .s .s .s',
          '.s .. .s ...s',
          '.s ...s .s ...s',
          '.s .s .. ...s',
          '...s .s .. .s',
          '.s .. ...s s.',
          '..ss .. .s ...s',
          's..s ..s. .. .s',
        ],
        [
          '..ss ..ss ..ss ..ss',
          '.S .s .S ..ss',
          '.S ...s .s ...S',
          '.h .S .h ..Ss',
          '...S ..s. ...S ..s.',
          's..s ..S. .s ...s',
          '.s ..Ss .. ..Ss',
          '.S .h .. .p',
        ],
      ],
    },
    turnarounds: ['.s .s .s .s', '.S .s .S ..ss'],
    colour: 'plain',
    fullGuitar: false,
  },
} as const satisfies Playing;
