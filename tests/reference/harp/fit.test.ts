import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { type FitSound, fitChart } from '../../../src/core/fit/fit';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { EVERY_TECHNIQUE, type Register } from '../../../src/core/harp/reach';
import { RICHTER } from '../../../src/core/harp/tunings';
import { pitchClassOf } from '../../../src/core/theory/pitch';

const chart = buildChart({ form: 'standard', key: pitchClassOf('G'), meter: '4/4' });
const harp = buildHarp({ tuning: RICHTER, key: pitchClassOf('C'), octave: 0 });

const soundsOver = (symbol: string, overbends: boolean): readonly FitSound[] => {
  const fit = fitChart({ chart, harp, technique: { ...EVERY_TECHNIQUE, overbends } });
  const chord = fit.bars.flatMap(({ chords }) => chords).find((each) => each.chord.symbol === symbol);
  return chord?.sounds ?? [];
};

/**
 * G blues on a C harp, worked out by hand from the layout (OEIS A291810) and the bend rule of
 * J. Acoust. Soc. Am. 103(4), 1998, doi 10.1121/1.421359; overbends a semitone up are common practice, no source.
 */
const BY_HAND: readonly (readonly [
  chord: string,
  degree: string,
  low: string,
  middle: string,
  high: string,
])[] = [
  ['G7', 'R', '2D 3B', '6B', '9B'],
  ['G7', '3', '3D', '7D', "10B'"],
  ['G7', '5', '1D', '4D', '8D'],
  ['G7', 'b7', "2D''", '5D', '9D 8OD'],
  ['C7', 'R', '1B', '4B 3OB', '7B 10B'],
  ['C7', '3', '2B', '5B', '8B'],
  ['C7', '5', '2D 3B', '6B', '9B'],
  ['C7', 'b7', "3D'", '6OB', "10B''"],
  ['D7', 'R', '1D', '4D', '8D'],
  ['D7', '3', "2D'", '5OB', "9B'"],
  ['D7', '5', "3D''", '6D', '10D'],
  ['D7', 'b7', '1B', '4B 3OB', '7B 10B'],
];

describe('chord tones of a G blues on a C harp, by octave', () => {
  it.each(BY_HAND)('%s, %s: %s | %s | %s', (chord, degree, low, middle, high) => {
    const where = (register: Register): string =>
      soundsOver(chord, true)
        .filter((sound) => sound.degree === degree && sound.register === register)
        .map(({ id }) => id)
        .join(' ');
    expect([where('low'), where('middle'), where('high')]).toEqual([low, middle, high]);
  });

  it('without overbends the middle octave lacks just the seventh of IV and the third of V', () => {
    const fit = fitChart({ chart, harp, technique: { ...EVERY_TECHNIQUE, overbends: false } });
    const gaps = fit.bars.flatMap(({ chords }) => chords.flatMap((each) => each.gaps));
    expect([...new Set(gaps.map(({ sentence }) => sentence))]).toEqual([
      'No B♭ between holes 3 and 10, except 6 overblow',
      'No F♯ between holes 2 and 9, except 5 overblow',
    ]);
  });
});
