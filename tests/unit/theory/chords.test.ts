import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  canonicalQuality,
  chordOf,
  guideTones,
  readSymbol,
  tonesWithBass,
} from '../../../src/core/theory/chords';
import { semitonesOf } from '../../../src/core/theory/degrees';
import { ENGLISH } from '../../../src/core/theory/note-names';
import { pitchClassOf } from '../../../src/core/theory/pitch';
import { DICTIONARY } from '../../helpers/chord-dictionary';

const spelled = (symbol: string): string =>
  (readSymbol(symbol)?.tones ?? []).map(({ degree, name }) => `${degree}:${name}`).join(' ');

describe('chordOf', () => {
  it.each([
    ['G7', 'R:G 3:B 5:D b7:F'],
    ['Gb7', 'R:Gb 3:Bb 5:Db b7:Fb'],
    ['F#m7', 'R:F# b3:A 5:C# b7:E'],
    ['Cdim7', 'R:C b3:Eb b5:Gb bb7:Bbb'],
    ['D#7b9', 'R:D# 3:F## 5:A# b7:C# b9:E'],
    ['Bm7b5', 'R:B b3:D b5:F b7:A'],
    ['C13', 'R:C 3:E 5:G b7:Bb 9:D 13:A'],
    ['E7#9', 'R:E 3:G# 5:B b7:D #9:F##'],
    ['Asus4', 'R:A 4:D 5:E'],
  ])('%s holds %s', (symbol, tones) => {
    expect(spelled(symbol)).toBe(tones);
  });

  it('keeps the bass of slash chords and drops one that repeats the root', () => {
    expect(chordOf({ root: 'C', quality: '7', bass: 'E' })).toMatchObject({
      symbol: 'C7/E',
      root: 0,
      bass: 4,
    });
    expect(chordOf({ root: 'C', quality: '7', bass: 'C' })).toMatchObject({ symbol: 'C7', bass: 0 });
  });

  it('refuses unknown parts, naming them', () => {
    expect(() => chordOf({ root: 'H', quality: '7' })).toThrow('Not a root: "H"');
    expect(() => chordOf({ root: 'C', quality: 'nice' })).toThrow('Unknown chord quality: "nice"');
    expect(() => chordOf({ root: 'C', quality: '7', bass: 'X' })).toThrow('Not a bass note: "X"');
  });

  it('gives every chord type of the dictionary degrees that agree with its pitch classes', () => {
    const roots = ['C', 'Gb', 'F#', 'A', 'Db', 'B'];
    fc.assert(
      fc.property(fc.constantFrom(...DICTIONARY), fc.constantFrom(...roots), (quality, root) => {
        const chord = chordOf({ root, quality });
        for (const tone of chord.tones) {
          expect((chord.root + semitonesOf(tone.degree)) % 12).toBe(tone.pitchClass);
          expect(pitchClassOf(tone.name)).toBe(tone.pitchClass);
        }
      }),
    );
  });
});

describe('readSymbol', () => {
  it.each([
    ['C-7', 'Cm7'],
    ['Cmi7', 'Cm7'],
    ['Cmin', 'Cm'],
    ['C△7', 'Cmaj7'],
    ['CΔ', 'Cmaj7'],
    ['Cmaj', 'C'],
    ['CM7', 'Cmaj7'],
    ['C°7', 'Cdim7'],
    ['Co7', 'Cdim7'],
    ['Cø', 'Cm7b5'],
    ['Cø7', 'Cm7b5'],
    ['C+', 'Caug'],
    ['B♭7/D', 'Bb7/D'],
    ['C7sus', 'C7sus4'],
    ['C7(b9)', 'C7b9'],
    ['C6/9', 'C69'],
    ['Cmin7b5', 'Cm7b5'],
  ])('%s is %s', (written, symbol) => {
    expect(readSymbol(written)?.symbol).toBe(symbol);
  });

  it.each(['', 'H7', 'c7', 'C7/H', 'Cfoo', '%', '7', 'b7'])('%s is no chord', (text) => {
    expect(readSymbol(text)).toBeNull();
  });

  it('never throws and reads back what it gives', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'ABCDEFGb#m7513o°øΔ/()sus ') }), (text) => {
        const chord = readSymbol(text);
        expect(chord === null ? null : readSymbol(chord.symbol)).toEqual(chord);
      }),
    );
  });
});

describe('the tones of a slash chord', () => {
  it.each([
    ['C/Bb', 'C:R E:3 G:5 Bb:b7'],
    ['F/G', 'F:R A:3 C:5 G:2'],
    ['C/E', 'C:R E:3 G:5'],
    ['C7', 'C:R E:3 G:5 Bb:b7'],
  ])('%s are %s: its bass counts where the chord lacks it', (symbol, expected) => {
    const chord = readSymbol(symbol);
    const tones = chord === null ? [] : tonesWithBass(chord);
    expect(tones.map(({ name, degree }) => `${name}:${degree}`).join(' ')).toBe(expected);
  });
});

describe('canonicalQuality and guideTones', () => {
  it('has one short spelling each', () => {
    expect(['min7', 'M', '', 'maj', '°7', 'ø', 'dom', 'what'].map(canonicalQuality)).toEqual([
      'm7',
      '',
      '',
      '',
      'dim7',
      'm7b5',
      '7',
      null,
    ]);
  });

  it.each([
    ['G7', '3 b7'],
    ['Am7', 'b3 b7'],
    ['Bdim7', 'b3 bb7'],
    ['C6', '3 6'],
    ['Gsus4', '4'],
    ['G7sus4', '4 b7'],
    ['G11', '11 b7'],
    ['Gm11', 'b3 b7'],
    ['Gadd11', '3'],
    ['C5', ''],
  ])('%s is marked by %s', (symbol, degrees) => {
    const chord = readSymbol(symbol);
    expect(
      chord === null
        ? null
        : guideTones(chord)
            .map(({ degree }) => degree)
            .join(' '),
    ).toBe(degrees);
  });
});

describe('typesetting', () => {
  it.each([
    ['C7', 'C7'],
    ['F#m7b5', 'F♯ø7'],
    ['Bdim7', 'B°7'],
    ['Ebmaj7', 'E♭△7'],
    ['Ebmaj9', 'E♭△9'],
    ['CmM7', 'Cm△7'],
    ['G7b9', 'G7♭9'],
    ['Bb7/D', 'B♭7/D'],
    ['Caug', 'C+'],
  ])('%s is set as %s', (symbol, text) => {
    const chord = readSymbol(symbol);
    expect(chord === null ? null : ENGLISH.chord(chord)).toBe(text);
  });

  it('gives the parts apart', () => {
    const chord = chordOf({ root: 'C#', quality: '7', bass: 'E#' });
    expect(ENGLISH.symbol(chord)).toEqual({
      root: 'C',
      accidental: '♯',
      quality: '7',
      bass: { letter: 'E', accidental: '♯' },
    });
  });
});

describe('qualities that are none', () => {
  it.each(['__proto__', 'constructor', 'toString', 'xyz'])('knows no quality “%s”', (quality) => {
    expect(canonicalQuality(quality)).toBeNull();
  });

  it('writes no symbol whose accidental could be the root’s', () => {
    expect(chordOf({ root: 'C', quality: '7b9sus4' }).symbol).toBe('C7b9sus4');
    expect(chordOf({ root: 'C', quality: 'add9' }).symbol).toBe('Cadd9');
  });
});
