import { Interval } from 'tonal';
import { describe, expect, it } from 'vitest';
import { noteNames } from '../../../src/core/theory/other-names';

const LETTERS = ['C', 'D', 'E', 'F', 'G', 'A', 'B'];
const SIGNS = ['bb', 'b', '', '#', '##'];
const NAMES = LETTERS.flatMap((letter) => SIGNS.map((sign) => letter + sign));

/**
 * music21 10.5.0 (BSD-3-Clause, PyPI, October 2026), music21/pitch.py, the worked examples of `Pitch.german` and
 * `Pitch.italian`: B flat is B and B is H, B double flat Heses, B sharp His; C si do, B flat si bemolle, B si, E flat mi
 * bemolle, C sharp do diesis, A double flat la doppio bemolle; `Pitch.spanish` has the same syllables. Accidentals
 * stand as signs here, as chord charts write them in both places (common practice, no source).
 */
describe('names in other places, against music21’s examples', () => {
  it.each([
    ['Bb', 'B'],
    ['B', 'H'],
    ['Bbb', 'H𝄫'],
    ['B#', 'H♯'],
    ['Eb', 'E♭'],
    ['C#', 'C♯'],
    ['Abb', 'A𝄫'],
  ])('German style: %s is %s', (name, shown) => {
    expect(noteNames('german').note(name)).toBe(shown);
  });

  it.each([
    ['Bb', 'Si♭'],
    ['B', 'Si'],
    ['Eb', 'Mi♭'],
    ['C#', 'Do♯'],
    ['Abb', 'La𝄫'],
    ['D', 'Re'],
    ['F', 'Fa'],
    ['G', 'Sol'],
  ])('fixed do: %s is %s', (name, shown) => {
    expect(noteNames('do').note(name)).toBe(shown);
  });

  it.each(['english', 'german', 'do'] as const)('%s: no two notes share a name', (system) => {
    expect(new Set(NAMES.map(noteNames(system).note)).size).toBe(NAMES.length);
  });
});

/** tonal 6 names the interval from the key note: `7m` is a minor seventh. Numbers are counted against the major scale. */
describe('numbers in the key, against tonal’s intervals', () => {
  const ALTERED: Readonly<Record<string, string>> = {
    P: '',
    M: '',
    m: '♭',
    A: '♯',
    d: '♭',
    AA: '♯♯',
    dd: '♭♭',
  };
  const numbered = (tonic: string, name: string): string => {
    const [, number = '', quality = ''] = /^-?(\d+)(\D+)$/.exec(Interval.distance(tonic, name)) ?? [];
    const plain = (Number(number) - 1) % 7;
    const perfect = [0, 3, 4].includes(plain);
    const sign = quality.startsWith('d') && !perfect ? `${ALTERED[quality]}♭` : ALTERED[quality];
    return `${sign}${plain + 1}`;
  };

  it.each(['C', 'G', 'Bb', 'F#', 'Db', 'A'])('in %s', (tonic) => {
    const names = noteNames('numbers', tonic);
    const known = NAMES.filter((name) => !/[Ad]{3}/.test(Interval.distance(tonic, name)));
    expect(known.length).toBeGreaterThan(28);
    // An interval below the key note is counted from above it.
    const above = known.filter((name) => !Interval.distance(tonic, name).startsWith('-'));
    expect(above.map(names.note)).toEqual(above.map((name) => numbered(tonic, name)));
  });

  it('has the lowered steps of a minor key and the blues', () => {
    const { note } = noteNames('numbers', 'A');
    expect(['A', 'C', 'D', 'Eb', 'E', 'G', 'G#', 'F', 'Bb'].map(note)).toEqual([
      '1',
      '♭3',
      '4',
      '♭5',
      '5',
      '♭7',
      '7',
      '♭6',
      '♭2',
    ]);
  });
});
