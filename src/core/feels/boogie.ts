import { riffs } from './bass-pattern';
import type { Feel } from './feel';
import { TRIPLET_FILLS } from './fills';

/**
 * Boogie: eighths between straight and triplets over R 3 5 6 | b7 6 5 3 in the bass (studybass.com, "The boogie-woogie
 * blues pattern").
 */
export const boogie = {
  id: 'boogie',
  name: 'Boogie',
  meter: null,
  swing: 1.7,
  swungUnit: 'eighth',
  tempo: { low: 120, usual: 152, high: 190 },
  bass: 'upright-bass',
  chords: 'piano',
  kit: 'sticks',
  drumming: {
    patterns: [
      [{ hat: 'xo xo xo xo', stick: '. X . X', kick: 'o o o o' }],
      [
        { hat: 'xo Xo xo Xo', snare: '.. X. .. X?', kick: 'x x x x' },
        { ride: 'xo Xo xo Xo', snare: '.? X. .. X.', kick: 'x o x o', foot: '. x . x' },
      ],
      [
        { ride: 'Xo Xo Xo Xo', snare: '.g X. .g X?', kick: 'x x x x', foot: '. x . x' },
        { ride: 'Xo Xo Xo Xo', snare: '.. Xg .? Xg', kick: 'x. x. x. x!', foot: '. x . x' },
      ],
    ],
    fills: TRIPLET_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R 3 5 6 | 7 6 5 3'),
      riffs('R 3 5 6 | 7 6 5 3', 'RR 33 55 66 | 77 66 55 33'),
      riffs('R^ 3^ 5^ 6^ | 7^ 6^ 5^ 3^'),
    ],
    walksOut: true,
    turnaround: ['L L L L', 'Lr Lr Lr Lr', 'Lr Lr Lr Lr'],
  },
  comping: {
    bars: {
      piano: [
        ['.. .s .. .s', 'h. .. .s s.', '.s .. .s ..'],
        ['.s .s .. ss', 's. ns s. .s', '.s ns .. .s', 'ss .s ss ..'],
        ['ss ns ss ns', '.s ns .s ns', 's. ss n. ss', 'Ss .s Ss .p'],
      ],
      'electric-piano': [
        ['h. .. .. ..', '.. .s .. .s'],
        ['.s .s .. h.', 's. .s .. ns'],
        ['ss ns s. .s', '.s Sn .s Ss'],
      ],
      organ: [
        ['h. .. .. ..', 'h. .. .s .s'],
        ['.s .s .s .s', 'h. .. s. ns'],
        ['.S .s .S .s', '.s ns .s ns', 'Ss .s Ss .p'],
      ],
      guitar: [
        ['.. s. .. s.', '55 66 55 66'],
        ['55 66 77 66', '55 66 55 66', '.s .s .s .s'],
        ['55 66 77 66', 'S. ns S. ns', '.S .s .S .s'],
      ],
    },
    turnarounds: ['S. s. s. s.', '.s s. .s s.', 'ss .s ss .s'],
    colour: 'plain',
    fullGuitar: false,
  },
  turnarounds: ['plain', 'rising bass', 'halves'],
} as const satisfies Feel;
