import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { EIGHTH_FILLS } from './fills';
import { straight } from './straight';

/** Straight rock. Chords as in straight eighths. */
export const rock = {
  limbs: 'rock',
  drumming: {
    patterns: [
      [
        { hat: 'xo xo xo xo', stick: '. X . X', kick: 'x. .. x. ..' },
        { hat: 'xo xo xo xo', stick: '. X . X', kick: 'x. .. .x ..' },
      ],
      [
        { hat: 'Xx Xx Xx Xx', snare: '. X . X', kick: 'x. .. xx ..' },
        { hat: 'Xx Xx Xx Xx', snare: '.. X. .? X.', kick: 'x. .x .x .!' },
        { hat: 'Xx Xx Xx Xx', snare: '.. X. .. X?', kick: 'xx .. x. ..' },
        { hat: 'Xx Xx Xx Xx', snare: '. X . X', kick: 'x. .x xx ..' },
      ],
      [
        { open: 'x x x x', snare: '. X . X', kick: 'xx .. xx .!' },
        { ride: 'Xx Xx Xx Xx', snare: '.? X. .? X.', kick: 'x. .x xx ..' },
        { ride: 'Xx Xx Xx Xx', snare: '.. X. .g X.', kick: 'xx .x .x ..' },
        { open: 'x x x x', snare: '.. X. .. Xx', kick: 'x. .x xx ..' },
      ],
    ],
    fills: EIGHTH_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R- -- R- -A', 'R- -- 5- --', 'R- -- RR --', 'R- -R -- 5-'),
      riffs('RR RR RR RA', 'R- RR -R RA', 'RR RR R- 5A', 'R- -R RR -A'),
      riffs('RR RR 55 77', 'RR R8 55 RA', 'RR RR RR 5A', 'RR 88 RR 5A', 'RR RR 77 5A', 'R- RR 8- 7A'),
    ],
    walksOut: false,
    turnaround: ['L- L- L- L-', 'Lr Lr Lr Lr', 'Lr Lr Lr Lr'],
  },
  comping: straight.comping,
} as const satisfies Playing;
