import { describe, expect, it } from 'vitest';
import { readSymbol } from '../../../src/core/theory/chords';
import { PITCH_CLASSES, spelledPitch } from '../../../src/core/theory/pitch';
import { plainName, spellOver } from '../../../src/core/theory/spelling';
import { asMidi } from '../../../src/core/theory/units';

const over = (symbol: string, tonic: string): readonly string[] => {
  const chord = readSymbol(symbol);
  if (chord === null) throw new Error(`no chord ${symbol}`);
  return PITCH_CLASSES.map(spellOver(chord, tonic));
};

describe('plain names', () => {
  it.each([
    [64, 'Db', 'E'],
    [71, 'Gb', 'B'],
    [69, 'Eb', 'A'],
    [65, 'F#', 'F'],
    [70, 'Eb', 'Bb'],
  ])('spell %i in %s as %s', (pitch, tonic, name) => {
    expect(plainName(pitch, tonic)).toBe(name);
  });
});

describe('names over a chord', () => {
  // The chord's own thirds, stacked letter by letter (any theory primer; checked against tonal in reference/theory).
  it.each([
    ['C7', 'Eb', ['C', 'E', 'G', 'Bb']],
    ['C#7', 'E', ['C#', 'E#', 'G#', 'B']],
    ['F#dim7', 'C', ['F#', 'A', 'C', 'Eb']],
    ['Gb7', 'Db', ['Gb', 'Bb', 'Db', 'Fb']],
  ])('of %s in %s hold %j', (symbol, tonic, names) => {
    expect(over(symbol, tonic)).toEqual(expect.arrayContaining(names));
  });

  it('call the rest plainly', () => {
    expect(over('C7', 'Eb')).toEqual(['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B']);
  });
});

describe('spelled pitches', () => {
  it.each([
    [64, 'Fb', 'Fb4'],
    [59, 'Cb', 'Cb4'],
    [60, 'B#', 'B#3'],
    [69, 'Bbb', 'Bbb4'],
  ])('%i as %s is %s', (pitch, name, text) => {
    expect(spelledPitch(asMidi(pitch), name)).toBe(text);
  });

  it('must be the pitch they name', () => {
    expect(() => spelledPitch(asMidi(60), 'D')).toThrow('Key number 60 is no D');
  });
});
