import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { SIXTEENTH_FILLS } from './fills';

/**
 * Funk blues: sixteenths, almost even. Kick, snare and hat where most strokes of 2,373 bars of funk and 620 of soul lie
 * (Groove MIDI Dataset, Gillick et al. 2019): kick on 1, its last sixteenth and the "and" of 3, loud backbeats with
 * ghosts after them. Bass locked with that kick; stabs of ninth chords slid into from below ("Funky blues rhythms",
 * a guitar magazine's lesson). Rhythms of the chords: common practice, no source.
 */
export const funkBlues = {
  limbs: 'funk',
  drumming: {
    patterns: [
      [
        { hat: 'x.o. x.o. x.o. x.o.', stick: '.... X... .... X...', kick: 'x... .... x.x. ...o' },
        { hat: 'x.o. x.o. x.o. x.o.', stick: '.... X... .... X...', kick: 'x..o .... ..x. ....' },
        { hat: 'x.o. x.o. x.o. x.oo', snare: '.... X..? .... X...', kick: 'x... .... ..x. ....' },
      ],
      [
        { hat: 'x.x. x.x. x.x. x.x.', snare: '.... X..g .g.. X..g', kick: 'x..x .... ..x. ....' },
        { hat: 'x.o. x.o. x.o. x.o.', snare: '.... X..g .g.? X...', kick: 'x... ...x x.x. ....' },
        {
          hat: 'x.x. x.x. x.x. x...',
          open: '.... .... .... ..x.',
          snare: '.... X..g .... X..g',
          kick: 'x..x .... ..x. ..!.',
        },
        {
          ride: 'x.o. x.o. x.o. x.o.',
          snare: '.... X... .g.. X..g',
          kick: 'x.x. ..x. ..x. ....',
          foot: '. x . x',
        },
      ],
      [
        { hat: 'xgog xgog xgog xgog', snare: '.g.. X..g .g.g X..g', kick: 'x.xx ...x x.x. ....' },
        {
          hat: 'xgog xgog xgog xgo.',
          open: '.... .... .... ...x',
          snare: '.g.. X..g .g.. X..g',
          kick: 'x..x .... ..xx ...!',
        },
        {
          ride: 'x.X. x.X. x.X. x.X.',
          snare: '.g.g X..g .g.g X.?g',
          kick: 'x..x ..!. ..xx ....',
          foot: '. x . x',
        },
      ],
    ],
    fills: SIXTEENTH_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R--. .... ..R. ....', 'R..R .... ..8. ....', 'R--. .... ..5. 7...', 'R... .... R.8. ....'),
      riffs(
        'R..R .... ..8. 7.5A',
        'R..R ..8. ..7. 5..A',
        'R--. R.5. ..7. 8...',
        'R..8 .... ..7. 5.7.',
        'R..R .... 5.7. 8..A',
      ),
      riffs('R..R ..8. ..7. 5.78', 'RR.8 ..7. R.5. 7.8A', 'R..R .R8. ..5. 7..A', 'R..R ..8. 7.5. R.7A'),
    ],
    walksOut: false,
    turnaround: ['L--. L--. L--. L--.', 'L..r L... L..r L...', 'L..r L.r. L..r L.r.'],
  },
  comping: {
    bars: {
      piano: [
        ['.... ..s. .... ....', '..s. .... .... ..s.', 's... .... ..s. ....', '.... ..s. ...s ....'],
        [
          '..s. ...s ..s. ....',
          '.s.. ..s. .... ..s.',
          's... ..s. ...s ..s.',
          '..s. .s.. ..s. ...p',
          '.... ..ss .... ..s.',
        ],
        ['s.s. ...S .s.. s.s.', '..sS ..s. .s.S ..s.', '.s.s ..S. .s.s ..Sp', 'S..s ..s. .S.. ..ss'],
      ],
      'electric-piano': [
        ['h... .... .... ....', '.... ..h. .... ....', '..s. .... ..h. ....', 'h... .... .... ..s.'],
        ['h... ..s. ...s ....', '..s. ...s h... ....', '.s.. ..s. .... ..s.', '..s. .... ..s. ...p'],
        ['s..s ..S. .s.. ..s.', '..sS ..s. h... ..s.', '.s.s ..S. .... ..Sp', 'S... ..ss .s.. ..s.'],
      ],
      organ: [
        ['h... .... .... ....', '...s .... ..s. ....', '.... .... h... ....', '.... ..s. .... ....'],
        ['...s .... ..s. ....', 'h... .... ..s. ...s', '...s ..s. .... ..s.', '..s. .... .s.. ..s.'],
        ['...S ..s. ..S. ..s.', '.s.s ..S. .s.. ..Sp', 'h... ..sS h... ..sS', '..S. .s.. ..Ss ..s.'],
      ],
      guitar: [
        ['.... ..s. .... ..s.', '..s. .... ..s. ....', '.... s... .... ..s.', '.... .... .... .cS.'],
        [
          '.... ..ss .... ..s.',
          '.s.. .cS. .... ..s.',
          '..s. ..s. .s.. ....',
          '...s ..s. ...s ..s.',
          '.cS. .... .cS. ..s.',
        ],
        ['.s.s ..Ss ..s. .cS.', '..ss .s.S ..ss .s..', '.cS. ..ss .cS. ..sp', 's..s .cS. .s.s ..s.'],
      ],
    },
    turnarounds: ['S... ..s. S... ..s.', 's..s .... s..s ..s.'],
    colour: 'rich',
    fullGuitar: true,
  },
} as const satisfies Playing;
