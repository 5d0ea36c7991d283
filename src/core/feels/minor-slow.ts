import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { SIXTEENTH_FILLS } from './fills';

/** A slow minor blues that moves in sixteenths. */
export const minorSlow = {
  limbs: 'soul',
  drumming: {
    patterns: [
      [
        { hat: 'xogo xogo xogo xogo', stick: '. X . X', kick: 'x... .... x... ....' },
        { hat: 'xo xo xo xo', stick: '. X . X', kick: 'x... ...o x... ....' },
        { hat: 'xogo xogo xogo xogo', stick: '.... X... .... X..?', kick: 'x... .... ..o. ....' },
        { ride: 'x.o. x.o. x.o. x.o.', stick: '. X . X', kick: 'x... ...o x... ....' },
      ],
      [
        { hat: 'xogo xogo xogo xogo', snare: '.... X..? ...? X...', kick: 'x... ...x x... ....' },
        { hat: 'xogo xogo xogo xogo', snare: '.... X..? .?.. X...', kick: 'x..o .... ..x. ....' },
        { hat: 'xogo xogo xogo xogo', snare: '.... X... ..?. X..?', kick: 'x... ...x ..x. ....' },
        {
          ride: 'x.o. x.o. x.o. x.o.',
          snare: '.... X... ...? X...',
          kick: 'x..o .... x... ....',
          foot: '. x . x',
        },
      ],
      [
        {
          ride: 'xogo xogo xogo xogo',
          snare: '...? X..g .g.? X..g',
          kick: 'x..o ...x x... ..!.',
          foot: '. x . x',
        },
        {
          hat: 'xogo xogo xogo xog.',
          open: '.... .... .... ...x',
          snare: '.... X..g .g.. X...',
          kick: 'x..x ..x. ..x. ....',
        },
        {
          ride: 'xogo xogo xogo xogo',
          snare: '.... X.?g .g.. X..g',
          kick: 'x..x .... ..xo ..!.',
          foot: '. x . x',
        },
        { hat: 'xogo xogo xogo xogo', snare: '..g. X... .g.g X...', kick: 'x... ..ox ..x. ...!' },
      ],
    ],
    fills: SIXTEENTH_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R--- ---- 5--- --A-', 'R--- ---- --R- --A-', 'R--- ---5 8--- ----', 'R--- ---- 5--- ----'),
      riffs(
        'R--- --R- 5--- --7A',
        'R--R ---- 5--- 7---',
        'R--- --5- 8--- --A-',
        'R--R --5- ---- 7-A-',
        'R--R ---- 8--- 5--A',
      ),
      riffs('R--R --5- 8--- 7-5A', 'R--R --R- 5--7 --aA', 'R--R --5- 8--7 5-A-', 'R--- 5-7- 8--7 5--A'),
    ],
    walksOut: false,
    turnaround: ['L--- L--- L--- L---', 'L--- L-r- L--- L-r-', 'L--r L--- L--r L-r-'],
  },
  comping: {
    bars: {
      piano: [
        [
          'h... .... .... ....',
          'h... .... ..h. ....',
          'h... .... h... ....',
          'h... .... .... ..s.',
          'h... .... ...s s...',
          '..h. .... .... ....',
          '..s. ...h .... ....',
        ],
        [
          'h... ..s. h... ...s',
          'h... ..h. .... ..s.',
          'h... .... ..s. s...',
          '..h. .... h... ..s.',
          'h... .... ...s s...',
          'h... ...s h... ..s.',
          's... ..h. ...s s...',
        ],
        [
          'h..s ..s. h..s ..s.',
          '..s. S.s. ..s. S..p',
          '..s. S... h..s ..s.',
          'h... ..sS .... S..p',
          'h..s .... ..sS ..s.',
        ],
      ],
      'electric-piano': [
        [
          'h... .... .... ....',
          'h... .... h... ....',
          'h... .... ..h. ....',
          '..h. .... .... ....',
          'h... .... ...s ....',
          '..h. .... ..h. ....',
        ],
        [
          'h... ...s ..h. ....',
          'h..h .... ..h. ....',
          'h... .... ..ss ....',
          'h... ..s. h... ..s.',
          '..h. ...s ..h. ....',
          'h... ...s h... ...s',
          '..h. .... ..s. s...',
          'h... ..s. ...h ....',
        ],
        [
          'h..s ...s ..h. ....',
          '.s.h .... ..s. S..p',
          '..s. ...s ..s. ...s',
          'h..s .... ..sS ..p.',
          '..sh .... ..sS ....',
          'h... ..s. h... ..s.',
        ],
      ],
      organ: [
        [
          'h... .... .... ....',
          'h... .... h... ....',
          'h... .... .... ..s.',
          'h... .... ..h. ....',
          '..h. .... .... ....',
          '..h. .... ..h. ....',
        ],
        [
          'h... .... h... ....',
          '..h. .... ..h. ....',
          '..h. .... ..s. ....',
          'h... .... ..s. s...',
          'h... ..s. h... ....',
          'h... ..h. .... ..s.',
          'h... .... ...s h...',
        ],
        [
          'h... ..s. h... .ss.',
          'h... S... h... S..s',
          'h... .ss. h... S...',
          '..sS .... h... S..s',
          '..sh .... ..sS ....',
          '..h. ..s. h... ...s',
          'h... S..s h... S...',
        ],
      ],
      guitar: [
        ['.... s... .... s...', 'h... .... .... s...', '.... s... .... ..s.', 'h... .... ..s. s...'],
        [
          '.... S... .... S.s.',
          '..s. S... ..s. S...',
          'h... .... ..s. S...',
          '...s S... .... S..s',
          '.... S.s. .... S...',
        ],
        ['..ss S... ..ss S...', '.... S.ss .... S.ss', '..s. S.s. ..s. S..s', '...s S... ..ss S...'],
      ],
    },
    turnarounds: ['h... ...s h... ...s', 'h... .... h... ..s.', 'h... ..s. h... ....', 'h... ...s h... ....'],
    colour: 'rich',
    fullGuitar: false,
  },
} as const satisfies Playing;
