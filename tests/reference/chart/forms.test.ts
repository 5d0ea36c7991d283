import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { FORM_IDS, type FormId } from '../../../src/core/chart/forms';
import { pitchClassOf } from '../../../src/core/theory/pitch';

const row = (form: FormId, key: string): readonly string[] =>
  buildChart({ form, key: pitchClassOf(key), meter: '4/4' }).bars.map((bar) =>
    bar.chords.map(({ chord }) => chord.symbol).join(' '),
  );

/** Chords of each bar typed in from the published rows, in C, lines of four parted by `/`. */
const PUBLISHED: readonly (readonly [form: FormId, source: string, bars: string])[] = [
  [
    'early-twelve',
    'Wikipedia, "Twelve-bar blues": the early row, V in bars 9 and 10',
    'C7 C7 C7 C7 / F7 F7 C7 C7 / G7 G7 C7 C7',
  ],
  ['standard', 'Open Music Theory, "The blues progression"', 'C7 C7 C7 C7 / F7 F7 C7 C7 / G7 F7 C7 C7'],
  [
    'quick-change',
    'Wikipedia, "Twelve-bar blues"; Everything2 for IV in bar 10',
    'C7 F7 C7 C7 / F7 F7 C7 C7 / G7 F7 C7 C7',
  ],
  ['standard-turnaround', '"Music Theory For Dummies", p. 152', 'C7 C7 C7 C7 / F7 F7 C7 C7 / G7 F7 C7 G7'],
  ['quick-change-turnaround', 'Everything2, "Twelve bar blues"', 'C7 F7 C7 C7 / F7 F7 C7 C7 / G7 F7 C7 G7'],
  ['minor-a', '"Music Theory For Dummies", p. 152', 'Cm7 Cm7 Cm7 Cm7 / Fm7 Fm7 Cm7 Cm7 / G7 Fm7 Cm7 Cm7'],
  [
    'minor-b',
    'Premier Guitar, "Essential blues progressions"; wholenote.com, "Minor Blues"',
    'Cm7 Cm7 Cm7 Cm7 / Fm7 Fm7 Cm7 Cm7 / Ab7 G7 Cm7 G7',
  ],
  [
    'jazz-swing',
    'teaching sheet "Jazz blues progressions in all 12 keys"',
    'C7 F7 C7 C7 / F7 F7 C7 C7 / Dm7 G7 C7+A7 Dm7+G7',
  ],
  [
    'jazz-bebop',
    'common practice, no source (from memory)',
    'C7 F7 C7 Gm7+C7 / F7 F#dim7 C7 A7b9 / Dm7 G7 Em7+A7 Dm7+G7',
  ],
  ['eight-v-second', 'Wikipedia, "Eight-bar blues"', 'C7 G7 F7 F7 / C7 G7 C7 G7'],
  ['eight-half-bar', 'Wikipedia, "Eight-bar blues"', 'C7 G7 F7 F7 / C7 G7+F7 C7 G7'],
  ['eight-iv-third', 'Wikipedia, "Eight-bar blues"', 'C7 C7 F7 F7 / C7 G7 C7+F7 C7+G7'],
  ['eight-tonic-half', 'Wikipedia, "Eight-bar blues"', 'C7 C7 C7 C7 / F7 F7 G7 C7'],
  ['eight-circle', '"Music Theory For Dummies", p. 152', 'C7 F7 C7 A7 / Dm7 G7 C7 G7'],
  [
    'sixteen-a',
    'Open Music Theory, "The blues progression"',
    'C7 C7 C7 C7 / C7 C7 C7 C7 / F7 F7 C7 C7 / G7 F7 C7 C7',
  ],
  ['sixteen-b', 'Wikipedia, "Sixteen-bar blues"', 'C7 C7 C7 C7 / F7 F7 C7 C7 / G7 F7 G7 F7 / G7 F7 C7 C7'],
  [
    'twenty-four',
    'common practice, no source: each bar of the standard twelve doubled',
    'C7 C7 C7 C7 / C7 C7 C7 C7 / F7 F7 F7 F7 / C7 C7 C7 C7 / G7 G7 F7 F7 / C7 C7 C7 C7',
  ],
  [
    'strains',
    'common practice, no source (from memory): strains of 12 and 16 bars, a trio of 32 a fourth up',
    'C C C C7 / F7 F7 C C / G7 G7 C C / C C A7 A7 / D7 D7 G7 G7 / C C A7 A7 / D7 G7 C C / ' +
      'F F F F / F F C7 C7 / C7 C7 C7 C7 / C7 C7 F F / F F F F7 / Bb Bb Bb Bb / Bb Bdim7 F D7 / G7 C7 F F',
  ],
];

describe('forms bar by bar, in C', () => {
  it.each(PUBLISHED)('%s (%s)', (form, _source, bars) => {
    const expected = bars
      .replaceAll('/ ', '')
      .split(' ')
      .map((bar) => bar.replace('+', ' '));
    expect(row(form, 'C')).toEqual(expected);
  });

  it('checks every form there is', () => {
    expect(PUBLISHED.map(([form]) => form).sort()).toEqual([...FORM_IDS].sort());
  });
});

describe('single bars in other keys', () => {
  it.each([
    // Open Music Theory and Wikipedia, "Twelve-bar blues": bar 10 is IV in the standard, V in the early form.
    ['standard', 'G', 10, 'C7'],
    ['early-twelve', 'G', 10, 'D7'],
    // Wikipedia, "Twelve-bar blues": the quick change.
    ['quick-change', 'G', 2, 'C7'],
    // Open Music Theory against Wikipedia, "Sixteen-bar blues": two forms of one name.
    ['sixteen-a', 'G', 9, 'C7'],
    ['sixteen-b', 'G', 9, 'D7'],
    // wholenote.com, "Minor Blues".
    ['minor-b', 'C', 9, 'Ab7'],
    ['minor-b', 'C', 10, 'G7'],
    // "Jazz blues progressions in all 12 keys".
    ['jazz-swing', 'C', 11, 'C7 A7'],
    ['jazz-swing', 'F', 9, 'Gm7'],
  ] as const)('%s in %s, bar %i is %s', (form, key, bar, chord) => {
    expect(row(form, key)[bar - 1]).toBe(chord);
  });
});

describe('chords of the blues', () => {
  // Open Music Theory v2, "Blues Harmony": all chords of a standard twelve-bar are dominant sevenths.
  it('are dominant sevenths throughout the standard form', () => {
    expect(new Set(row('standard', 'E'))).toEqual(new Set(['E7', 'A7', 'B7']));
  });

  // Spelling by key (common practice, no source): flats in flat keys, sharps in sharp keys.
  it.each([
    ['Db', 'Db7 Gb7 Ab7'],
    ['F#', 'F#7 B7 C#7'],
    ['Eb', 'Eb7 Ab7 Bb7'],
    ['B', 'B7 E7 F#7'],
  ])('in %s are spelled %s', (key, chords) => {
    const bars = row('standard', key);
    expect([bars[0], bars[4], bars[8]].join(' ')).toBe(chords);
  });
});
