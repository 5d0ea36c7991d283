import { riffs } from './bass-pattern';
import type { Feel } from './feel';
import { EIGHTH_FILLS } from './fills';

/**
 * Rhumba blues: steady eighths with the backbeat kept ("Blues rumba", Drum!), 3+3+2 in the bass ("12 Bar Blues, Part
 * 2", ACEMM).
 */
export const rhumba = {
  id: 'rhumba',
  name: 'Rhumba blues',
  meter: null,
  swing: 1,
  swungUnit: 'eighth',
  tempo: { low: 96, usual: 118, high: 144 },
  bass: 'fingered-bass',
  chords: 'piano',
  kit: 'sticks',
  drumming: {
    patterns: [
      [{ hat: 'xo xo xo xo', stick: '.. X. .. X.', kick: 'x. .o .. o.' }],
      [
        { hat: 'xo xo xo xo', stick: '.. X. .. X.', kick: 'x. .x .. o.', high: '.. .. .. .o' },
        { hat: 'xo xo xo xo', stick: '.. X. .. X.', kick: 'x. .x .. .!', high: '.. .. .. xx' },
      ],
      [
        {
          ride: 'xo xo xo xo',
          snare: '.. X. .. X.',
          kick: 'x. .x .. x.',
          high: '.. .. .. .x',
          low: '.. .. .x ..',
        },
        {
          bell: 'x. x. x. x.',
          snare: '.. X. .? X.',
          kick: 'x. .x .. x.',
          high: '.. .? .. xx',
          foot: '. x . x',
        },
      ],
    ],
    fills: EIGHTH_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R- -- -- 5-', 'R- -3 -- 5-'),
      riffs('R- -3 -- 5-', 'R- -5 -- 8-'),
      riffs('R- -5 8- 5-', 'R- -3 5- 3A'),
    ],
    walksOut: false,
    turnaround: ['L- -L L- L-', 'L- -L L- L-', 'L- -L L- Lr'],
  },
  comping: {
    bars: {
      piano: [
        ['h. .s .. s.', 's. .s .. ..', '.. .. .s s.'],
        ['s. .s .. s.', '.s .s s. .s', 's. .s .s s.', '.. .s .s s.'],
        ['s. .S .s Ss', '.s sS .s Ss', 'S. .S s. S.'],
      ],
      'electric-piano': [
        ['h. .h .. ..', 'h. .. .. s.'],
        ['s. .s .. s.', 'h. .s .. s.', '.s .. .s s.'],
        ['s. .S .s S.', '.s sS .. Ss'],
      ],
      organ: [
        ['h. .. .. ..', 'h. .. .. s.'],
        ['h. .s .. s.', '.s .. .s s.', 'h. .. .s .s'],
        ['s. .S .. S.', '.S .s .S Ss'],
      ],
      guitar: [
        ['.. s. .. s.', 's. .s .. ..'],
        ['.. S. .. Ss', 's. .s .. s.', '.s S. .s S.'],
        ['s. .S .. S.', '.s Ss .s Ss', 's. .S .s S.'],
      ],
    },
    turnarounds: ['.s s. .s s.', 's. .s s. s.'],
    colour: 'plain',
    fullGuitar: false,
  },
  turnarounds: ['plain', 'halves', 'flat six'],
} as const satisfies Feel;
