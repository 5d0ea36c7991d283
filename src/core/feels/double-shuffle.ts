import { riffs } from './bass-pattern';
import type { Playing } from './feel';
import { TRIPLET_FILLS } from './fills';

/**
 * The double shuffle: the snare shuffles throughout, accents on 2 and 4 (an introductory drum course's lesson on
 * shuffles). Bass and snare leave hardly an eighth free, so the chords are held through, or answer with few strokes: after
 * the first beat, on the backbeats or ahead of the bar, and seldom double the riff (common practice, no source).
 */
export const doubleShuffle = {
  limbs: 'shuffle',
  drumming: {
    patterns: [
      [
        { hat: 'xo xo xo xo', snare: 'gg og gg og', kick: 'x . x .' },
        { hat: 'xo xo xo xo', snare: 'gg og ?g oo', kick: 'x. .. x. .?' },
        { hat: 'xo xo x. xo', snare: '?g og gg og', kick: 'x. .? x. ..' },
        { hat: 'xo xo xo xo', snare: 'gg o? gg og | ?g og g? oo', kick: 'x . x .' },
      ],
      [
        { hat: 'xo xo xo xo', snare: 'go Xo go Xo', kick: 'x. .? x. .?' },
        { ride: 'xo xo xo xo', snare: 'go Xo ?o Xo', kick: 'x. .. x! ..', foot: '. x . x' },
        { hat: 'xo xo xo xo', snare: 'go Xo gg X?', kick: 'x. o! x. o.' },
        { ride: 'xo xo xo xo', snare: 'gg Xo go Xg | ?g Xo go Xo', kick: 'x. .? x. .!', foot: '. x . x' },
        { hat: 'xo xo xo xo', snare: 'go X? go Xo', kick: 'x. .! x. .. | x. .. x! ..' },
        { hat: 'x. xo x. xo', snare: '?o Xo go Xo', kick: 'x. o. x? o.' },
      ],
      [
        { ride: 'Xo Xo Xo Xo', snare: 'oo Xo ?o Xo', kick: 'x. o! x. o.', foot: '. x . x' },
        { ride: 'Xo Xo Xo Xo', snare: 'go Xo go Xo | ?o Xo go Xx', kick: 'x. x. x! x.', foot: '. x . x' },
        { ride: 'Xo Xo Xo Xo', snare: 'og Xo oo X!', kick: 'x. x! x. .?', foot: '. x . x' },
        { hat: 'Xo Xo Xo Xo', snare: 'oo Xo g? Xo', kick: 'x. o. x. x! | x. o! x. x.' },
        { ride: 'Xo Xo Xo Xo', snare: 'o? Xo go Xo', kick: 'x. .! x. x.', foot: '. x . x' },
      ],
    ],
    fills: TRIPLET_FILLS,
    sweeps: true,
  },
  bassLine: {
    patterns: [
      riffs('R 3 5 6 | 7 6 5 3', 'R R 5 6', 'R 5 8 5', 'R 3 5 A'),
      [
        'walk',
        ...riffs(
          'RR 33 55 66 | 77 66 55 33',
          'RR 33 55 6A',
          'R R 5 6 | R 3 5 6',
          'R 8 7 5',
          'R 6 5 3',
          'RR 6 55 3',
          'R 33 5 6A',
          'R -R 5 66',
          'R 8 77 5',
        ),
      ],
      [
        'walk',
        ...riffs(
          'RR 33 55 66 | 77 66 55 3A',
          'RR 88 77 5A',
          'R3 5 85 3A',
          'R RR 5 6A',
          'R 8R 7 5A',
          'RR 3 55 6',
          'R 33 5R 6A',
        ),
      ],
    ],
    walksOut: true,
    turnaround: ['L L L L', 'L Lr L Lr', 'Lr Lr Lr Lr'],
  },
  comping: {
    bars: {
      piano: [
        ['h. .. .. ..', '.. .s .. ..', 's. .s .. ..', 'h. .. .. .s', '.. .. .h ..', '.. .s .. .s'],
        [
          's. .s .. ..',
          '.. .s h. ..',
          'h. .. .s .s',
          '.s .. h. ..',
          '.. .s .. .s',
          'h. .s .. .p',
          '.. .h .. ..',
          '.s .h .. .s',
          '.s .. .s .p',
        ],
        [
          'h. .S .. .p',
          '.s .S h. .s',
          'S. .s .h .p',
          '.S .s .. Ss',
          '.. .S .s .p',
          '.h .. ns .s',
          'h. .s .S .s',
          '.s .n s. .p',
        ],
      ],
      'electric-piano': [
        ['h. .. .. ..', 'h. .. .h ..', '.. .h .. ..', '.h .. .. ..', '.. .. h. ..'],
        ['h. .. .. .s', '.. .h .. ..', '.s .. h. ..', 'h. .h .. .p', '.h .. .h ..', 's. .h .. ..'],
        ['h. .s .h .p', '.s .h .. .s', 'S. .h .. Ss', '.h .S .h ..', 'h. .s .s .p'],
      ],
      organ: [
        ['h. .. .. ..', '.. h. .. ..', '.. .. h. ..', '.h .. .. ..'],
        ['h. .. .. ..', 'h. .. .h ..', '.h .. .. .s', '.. .h .. ..', 'h. .. .s .s', '.s .h .. ..'],
        ['h. .s .h .p', '.s .h .n s.', '.S .h .S .p', 'h. .n h. .s', '.h .s .. .S'],
      ],
      guitar: [
        ['.. s. .. s.', 'h. .. .. ..', '.. S. .. .s', '.. .h .. ..', '.. .. h. ..', '.. .s .. ..'],
        [
          '55 66 55 66',
          'h. .. .. .s',
          '.. S. .. .s',
          '.. .h .. ..',
          '.s .. .s .p',
          'h. .h .. .p',
          '.s .. h. ..',
          '.. .s .h ..',
          'h. .. .s ..',
          '.s .. .h ..',
          'h. .s .. ..',
        ],
        [
          '55 66 77 66',
          'h. .S .. Ss',
          '.. Sc h. .p',
          '.S .. .h .p',
          'h. .h .. .S',
          '.S .. .h ..',
          'S. .h .n s.',
          'h. .s .h .p',
          '.h .. .S .p',
          'h. .S .h ..',
        ],
      ],
    },
    turnarounds: ['.s .. .s .p', '.S .. .S .s', 'h. .s h. .S', 'h. .. h. .s', '.S .s h. ..'],
    colour: 'plain',
    fullGuitar: false,
  },
} as const satisfies Playing;
