import { Note } from 'tonal';
import { describe, expect, it } from 'vitest';
import {
  isNoteName,
  keyName,
  PITCH_CLASSES,
  pitchClassOf,
  pitchName,
  spellInKey,
  withoutDoubleAccidental,
} from '../../../src/core/theory/pitch';
import { asMidi, asPitchClass } from '../../../src/core/theory/units';

describe('key names', () => {
  it('spells the twelve keys as musicians do', () => {
    expect(PITCH_CLASSES.map((key) => keyName(key, 'major')).join(' ')).toBe('C Db D Eb E F F# G Ab A Bb B');
    expect(PITCH_CLASSES.map((key) => keyName(key, 'minor')).join(' ')).toBe('C C# D Eb E F F# G G# A Bb B');
  });
});

describe('pitch classes and names', () => {
  it.each([
    ['C', 0],
    ['B#', 0],
    ['Cb', 11],
    ['F##', 7],
    ['Bbb', 9],
  ])('%s is pitch class %i', (name, pitchClass) => {
    expect(pitchClassOf(name)).toBe(pitchClass);
  });

  it('refuses what is no note', () => {
    expect(() => pitchClassOf('H')).toThrow('Not a note name: "H"');
    expect(['C', 'Bb', 'F##', 'H', 'c', 'C4', 'C#b', ''].map(isNoteName)).toEqual([
      true,
      true,
      true,
      false,
      false,
      false,
      false,
      false,
    ]);
  });

  it.each([
    ['G', 'G Ab A Bb B C Db D Eb E F F#'],
    ['F', 'F Gb G Ab A Bb Cb C Db D Eb E'],
    ['F#', 'F# G G# A A# B C C# D D# E E#'],
    ['Db', 'Db D Eb Fb F Gb G Ab A Bb Cb C'],
  ])('spells every pitch class in %s without double accidentals', (tonic, names) => {
    const from = pitchClassOf(tonic);
    expect(PITCH_CLASSES.map((step) => spellInKey(asPitchClass(from + step), tonic)).join(' ')).toBe(names);
  });

  it.each([
    [60, 'C', 'C4'],
    [70, 'F', 'Bb4'],
    [71, 'Gb', 'Cb5'],
    [77, 'F#', 'E#5'],
    [72, 'C#', 'B#4'],
    [55, 'G', 'G3'],
  ])('names key %i in %s as %s, which tonal reads back', (midi, tonic, name) => {
    expect(pitchName(asMidi(midi), tonic)).toBe(name);
    expect(Note.midi(name)).toBe(midi);
  });

  it('refuses fractions', () => {
    expect(() => pitchName(asMidi(60.5))).toThrow('whole key number, got 60.5');
  });

  it('writes plain notes for double accidentals only', () => {
    expect(['Bbb', 'F##', 'Fb', 'C#'].map(withoutDoubleAccidental)).toEqual(['A', 'G', 'Fb', 'C#']);
  });
});
