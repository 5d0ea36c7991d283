import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FORM_IDS, FORMS, formBars, isFormId } from '../../../src/core/chart/forms';
import { readRomanChord, romanChord, romanOf } from '../../../src/core/chart/roman';
import { chordOf, readSymbol } from '../../../src/core/theory/chords';
import { DICTIONARY } from '../../helpers/chord-dictionary';

const inC = (roman: string): string | undefined => readRomanChord(roman, 'C')?.symbol;

describe('readRomanChord', () => {
  it.each([
    ['I', 'C'],
    ['i', 'Cm'],
    ['I7', 'C7'],
    ['iv7', 'Fm7'],
    ['bVI7', 'Ab7'],
    ['#ivo7', 'F#dim7'],
    ['#iv°7', 'F#dim7'],
    ['ii7', 'Dm7'],
    ['iim7b5', 'Dm7b5'],
    ['iiø', 'Dm7b5'],
    ['VI7b9', 'A7b9'],
    ['Imaj7', 'Cmaj7'],
    ['imaj7', 'CmMaj7'],
    ['viio', 'Bdim'],
    ['I7/3', 'C7/E'],
    ['I7/b7', 'C7/Bb'],
    ['V7sus4', 'G7sus4'],
    ['I6/9', 'C69'],
    ['bII7', 'Db7'],
  ])('%s in C is %s', (roman, symbol) => {
    expect(inC(roman)).toBe(symbol);
  });

  it.each(['', 'C7', 'VIII', 'IIII', 'iV', 'I7/x', 'I7/99', '7', 'Ifoo', 'b'])('%s is no numeral', (text) => {
    expect(readRomanChord(text, 'C')).toBeNull();
    expect(() => romanChord(text, 'C')).toThrow(`Not a Roman numeral: "${text}"`);
  });

  it('turns plain numerals into sevenths for the blues only', () => {
    expect(readRomanChord('I', 'C', { sevenths: true })).toMatchObject({ symbol: 'C7', roman: 'I7' });
    expect(readRomanChord('iv', 'C', { sevenths: true })).toMatchObject({ symbol: 'Fm7', roman: 'iv7' });
    expect(readRomanChord('Imaj7', 'C', { sevenths: true })?.symbol).toBe('Cmaj7');
  });

  it('writes no root with a double accidental', () => {
    expect(readRomanChord('bVI7', 'Db')?.rootName).toBe('A');
    expect(readRomanChord('bIII', 'Db')?.rootName).toBe('Fb');
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'IViv#b7mo5/39 xø') }), (text) => {
        expect(readRomanChord(text, 'F#')?.tones.length ?? 1).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });
});

describe('romanOf', () => {
  it.each([
    ['G7', 'C', 'V7'],
    ['Fm7', 'C', 'iv7'],
    ['F#dim7', 'C', '#ivo7'],
    ['Ab7', 'C', 'bVI7'],
    ['C7/E', 'F', 'V7/3'],
    ['Am7b5', 'G', 'iim7b5'],
  ])('%s in %s is %s', (symbol, tonic, roman) => {
    const chord = readSymbol(symbol);
    expect(chord === null ? null : romanOf(chord, tonic)).toBe(roman);
  });

  it('gives a numeral that reads back to the same pitches, whatever the chord', () => {
    const roots = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
    const root = fc.constantFrom(...roots);
    fc.assert(
      fc.property(fc.constantFrom(...DICTIONARY), root, root, root, (quality, on, bass, tonic) => {
        const chord = chordOf({ root: on, quality, bass });
        const back = romanChord(romanOf(chord, tonic), tonic);
        expect(back.tones.map(({ pitchClass }) => pitchClass)).toEqual(
          chord.tones.map(({ pitchClass }) => pitchClass),
        );
        expect([back.root, back.bass, back.quality]).toEqual([chord.root, chord.bass, chord.quality]);
      }),
    );
  });
});

describe('forms', () => {
  it('are named, described, sourced and made of readable numerals in whole lines of four', () => {
    for (const id of FORM_IDS) {
      const form = FORMS[id];
      expect(`${form.name}${form.description}${form.source}`).not.toContain('undefined');
      expect(form.description).toMatch(/^[A-Z].*\.$/);
      for (const line of form.lines) expect(line.split('|')).toHaveLength(4);
      for (const roman of formBars(form).flat())
        expect(romanChord(roman, 'G').tones.length).toBeGreaterThan(2);
    }
    expect(new Set(FORM_IDS.map((id) => FORMS[id].name)).size).toBe(FORM_IDS.length);
    expect(isFormId('standard') && !isFormId('toString')).toBe(true);
  });
});
