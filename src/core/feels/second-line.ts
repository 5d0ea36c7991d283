import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { MARCH_FILLS } from './fills';

/**
 * Second line: sixteenths between straight and triplets, the hat's foot on 2 and 4, accents on a clave ("Vital beats
 * every drummer must know", Drum!, and a 2020 drum lesson on developing street parade grooves).
 */
export const secondLine = {
  limbs: 'funk',
  drumming: {
    patterns: [
      [
        { snare: 'ogg? ggo? ggog gog?', kick: 'x... ..o. .... ....', foot: '. x . x' },
        {
          stick: 'X..X ..X. ..X. X...',
          kick: 'x... ..x. .... ....',
          foot: '. x . x',
          hat: 'o.o. o.o. o.o. o.o.',
        },
        { snare: 'ogg? gog? ggo? gog?', kick: 'x... ..o. .... ..?.', foot: '. x . x' },
        { snare: 'oggo ggog gogg oggg', kick: 'x... .... o... ....', foot: '. x . x' },
      ],
      [
        { snare: 'XggX ggXg g?xg xgg?', kick: 'x..o ..x. .... ....', foot: '. x . x' },
        { snare: 'XggX g?xg ggXg xg?g', kick: 'x... ..x. ..!. x...', foot: '. x . x' },
        { snare: 'XggX ggXg gXgg Xggg', kick: 'x... .... x... x...', foot: '. x . x' },
        { snare: 'XggX ggxg ggXg g?g?', kick: 'x..x .... ..x. ....', foot: '. x . x' },
      ],
      [
        { snare: 'XggX ggXg ggxg XggX', kick: 'x..x ..x. ..x. x...', foot: '. x . x' },
        {
          snare: 'XgoX goXg goXg XooX',
          kick: 'x..x ..x. .... x.!.',
          foot: '. x . x',
          bell: 'o.o. o.o. o.o. o.o.',
        },
        { snare: 'XggX ggXg gXgg Xggo', kick: 'x..x .... x..! x...', foot: '. x . x' },
        { snare: 'XgoX ggXg ogXg XgoX', kick: 'x... ..x. ..x. x..!', foot: '. x . x' },
      ],
    ],
    fills: MARCH_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R--- --5- ---- --A-', 'R--- ---- 5--- --A-', 'R--- ---R 5--- --A-', 'R--- --5- --8- ----'),
      riffs('R--5 --6- 8--- 5-A-', 'R--R --5- --6- A---', 'R--- --5- --6- 5-A-', 'R--5 --8- --5- A---'),
      riffs('R--3 --5- 8-6- 5-A-', 'R--R --5- R-3- 5-A-', 'R--R 5-6- 8--- 5-A-', 'R--3 5--- 8--6 --A-'),
    ],
    walksOut: false,
    turnaround: ['L--- --L- L--- --L-', 'L--r --L- L--r --L-', 'L--r --L- L-r- L-r-'],
  },
  comping: {
    bars: {
      piano: [
        [
          's... ..s. .... ....',
          '..s. .... ..s. ....',
          'h... .... ..s. ....',
          '...s .... ..s. ....',
          '.... ..s. .... s...',
          '..s. .... .... s...',
        ],
        [
          's..s ..s. .... s...',
          '..s. ..s. ..s. ..s.',
          's..s ..s. ..s. ....',
          '..s. s... ..s. ...s',
          '...s ..s. ...s ..s.',
          's... ..s. ..s. ..s.',
        ],
        [
          's..S ..s. ..s. S...',
          'S..s ..S. ..ss S..p',
          '..sS ..s. ..sS ..s.',
          '...S ..s. s..s ..S.',
          '..s. S..s ..s. S..p',
          's..S .s.. ..S. s..s',
        ],
      ],
      'electric-piano': [
        ['h... .... h... ....', '..s. .... ..h. ....', '..h. .... .... ....', 'h... .... ..s. ....'],
        ['s..s ..s. .... h...', '..s. ..s. ..s. ..s.', '...s ..s. .... ..s.', '..s. h... .... ..s.'],
        ['s..S ..s. ..s. S...', '..s. ..Ss ..s. ..Ss', '...S ..s. ..S. s..p', '..sS .... ..sS ..s.'],
      ],
      organ: [
        ['h... .... .... ....', 'h... .... ..s. ....', '.... .... h... ....', '..h. .... .... ....'],
        ['..s. ..s. ..s. ..s.', 'h... ..s. h... ..s.', '...s ..s. ...s ..s.', '..s. .... ..s. s...'],
        ['..S. ..s. ..Ss ..s.', 's..S ..s. ..s. S...', '...S ..s. ..s. S..s', '..S. ..Ss ..s. ..s.'],
      ],
      guitar: [
        ['..s. .... ..s. ....', '.... s... .... s...', '..s. .... .... ..s.', '.... s... ..s. ....'],
        ['..s. ..s. ..s. ..s.', '..s. s... ..s. s.s.', '...s ..s. ..s. s...', '..s. ..s. ..s. s...'],
        ['..ss ..S. ..ss ..S.', 's..S ..s. ..s. S...', '..s. S... ..s. S.s.', '...S ..s. ..ss ..S.'],
      ],
    },
    turnarounds: ['s..s ..s. s..s ..s.', '..s. s..s ..s. s...'],
    colour: 'plain',
    fullGuitar: false,
  },
} as const satisfies Playing;
