import { riffs } from './bass-pattern';
import type { Feel } from './feel';
import { MARCH_FILLS } from './fills';

/**
 * Second line: sixteenths between straight and triplets, the hat's foot on 2 and 4, accents on a clave ("Vital beats
 * every drummer must know", Drum!, and a 2020 drum lesson on developing street parade grooves).
 */
export const secondLine = {
  id: 'second-line',
  name: 'Second line',
  meter: null,
  swing: 1.4,
  swungUnit: '16th',
  tempo: { low: 78, usual: 96, high: 112 },
  bass: 'fingered-bass',
  chords: 'piano',
  kit: 'sticks',
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
      ],
      [
        { snare: 'XggX ggXg g?xg xgg?', kick: 'x..o ..x. .... ....', foot: '. x . x' },
        { snare: 'XggX g?xg ggXg xg?g', kick: 'x... ..x. ..!. x...', foot: '. x . x' },
      ],
      [
        { snare: 'XggX ggXg ggxg XggX', kick: 'x..x ..x. ..x. x...', foot: '. x . x' },
        {
          snare: 'XgoX goXg goXg XooX',
          kick: 'x..x ..x. .... x.!.',
          foot: '. x . x',
          bell: 'o.o. o.o. o.o. o.o.',
        },
      ],
    ],
    fills: MARCH_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R--- --5- ---- --A-', 'R--- ---- 5--- --A-'),
      riffs('R--5 --6- 8--- 5-A-', 'R--R --5- --6- A---'),
      riffs('R--3 --5- 8-6- 5-A-', 'R--R --5- R-3- 5-A-'),
    ],
    walksOut: false,
    turnaround: ['L--- --L- L--- --L-', 'L--r --L- L--r --L-', 'L--r --L- L-r- L-r-'],
  },
  comping: {
    bars: {
      piano: [
        ['s... ..s. .... ....', '..s. .... ..s. ....', 'h... .... ..s. ....'],
        ['s..s ..s. .... s...', '..s. ..s. ..s. ..s.', 's..s ..s. ..s. ....'],
        ['s..S ..s. ..s. S...', 'S..s ..S. ..ss S..p', '..sS ..s. ..sS ..s.'],
      ],
      'electric-piano': [
        ['h... .... h... ....', '..s. .... ..h. ....'],
        ['s..s ..s. .... h...', '..s. ..s. ..s. ..s.'],
        ['s..S ..s. ..s. S...', '..s. ..Ss ..s. ..Ss'],
      ],
      organ: [
        ['h... .... .... ....', 'h... .... ..s. ....'],
        ['..s. ..s. ..s. ..s.', 'h... ..s. h... ..s.'],
        ['..S. ..s. ..Ss ..s.', 's..S ..s. ..s. S...'],
      ],
      guitar: [
        ['..s. .... ..s. ....', '.... s... .... s...'],
        ['..s. ..s. ..s. ..s.', '..s. s... ..s. s.s.'],
        ['..ss ..S. ..ss ..S.', 's..S ..s. ..s. S...'],
      ],
    },
    turnarounds: ['s..s ..s. s..s ..s.', '..s. s..s ..s. s...'],
    colour: 'plain',
    fullGuitar: false,
  },
  turnarounds: ['halves', 'plain', 'cycle'],
} as const satisfies Feel;
