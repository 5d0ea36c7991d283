import { riffs } from './bass-pattern';
import type { Feel } from './feel';
import { TRIPLET_FILLS } from './fills';

/**
 * The shuffle: triplets with the middle note left out, 2 : 1, and the same ratio at any tempo (de Haas & Honing, SMPC
 * 2007: a shuffle groove scales proportionally). Ratio and drum figures: "Learn & Master Drums", session 6, and a
 * 2015 survey of drum feels.
 */
export const shuffle = {
  id: 'shuffle',
  name: 'Shuffle',
  meter: null,
  swing: 2,
  swungUnit: 'eighth',
  tempo: { low: 80, usual: 108, high: 140 },
  bass: 'upright-bass',
  chords: 'piano',
  kit: 'sticks',
  drumming: {
    patterns: [
      [
        { hat: 'xo xo xo xo', stick: '. X . X', kick: 'x . x .' },
        { hat: 'xo xo xo xo', stick: '. X . X', kick: 'o o o o' },
      ],
      [
        { hat: 'xo Xo xo Xo', snare: '.. X. .? X?', kick: 'x o x o' },
        { hat: 'xo Xo xo Xo', snare: '.? X. .? X.', kick: 'x. .. x! ..' },
        { ride: 'xo Xo xo Xo', snare: '.. X? .. X.', kick: 'x o x o', foot: '. x . x' },
      ],
      [
        { ride: 'Xo Xo Xo Xo', snare: '.g Xg .g X?', kick: 'x. x. xo x.', foot: '. x . x' },
        { ride: 'Xo Xo Xo Xo', snare: '.? Xg .? Xg', kick: 'X. x. x! x!', foot: '. x . x' },
      ],
    ],
    fills: TRIPLET_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      ['two', ...riffs('R - 5 A', 'R -- 3 5')],
      ['walk', ...riffs('R 3 5 6 | 7 6 5 3', 'R R 3 5', 'R 8 5 A')],
      ['walk', ...riffs('RR 33 55 66 | 77 66 55 3A', 'RR 33 55 6A')],
    ],
    walksOut: true,
    turnaround: ['L L L L', 'L L L L', 'Lr Lr Lr Lr'],
  },
  comping: {
    bars: {
      piano: [
        ['.. .s .. ..', '.. .s .. .s', 'h. .. .. .s', '.. .. .s s.'],
        ['.s .s .. .s', '.. Ss .. .s', 's. .s .. Ss', '.s .. .s .p', 'h. .s .. s.'],
        ['.s .s .s .s', '55 66 55 6S', 'S. .s .s Sp', '.s ns .s ns', 'sn s. sn s.'],
      ],
      'electric-piano': [
        ['h. .. .. ..', 'h. .. .h ..', '.. .h .. ..'],
        ['h. .s .. .s', '.s .. h. ..', 'h. .. .s .p'],
        ['s. .s h. .s', '.s .s .s .p', 'S. .s .. Ss'],
      ],
      organ: [
        ['h. .. .. ..', 'h. .. .. ..', '.. h. .. ..'],
        ['h. .. h. .s', '.s .s .s .s', 'h. .. .s .s'],
        ['.S .s .S .s', 'h. .n s. .s', '.s ns .s ns'],
      ],
      guitar: [
        ['.. s. .. s.', '.. S. .. .s', '.. s. .s ..'],
        ['55 66 55 66', '.. S. .. Ss', '.s .s .s .s', '55 66 77 66'],
        ['55 66 77 66', '.S .s .S .s', '55 6S 55 6S', '.. Sc S. Sp', 'S. ns S. ns'],
      ],
    },
    turnarounds: ['S. s. s. s.', 's. .s s. .s', 'S. s. sc S.'],
    colour: 'plain',
    fullGuitar: false,
  },
  turnarounds: ['plain', 'falling line', 'parallel sixths', 'rising bass', 'contrary', 'halves', 'cycle'],
} as const satisfies Feel;
