import { chordParserFactory } from 'chord-symbol';
import { Chord as TonalChord } from 'tonal';
import { describe, expect, it } from 'vitest';
import { guideTones, readSymbol } from '../../../src/core/theory/chords';
import { pitchClassOf } from '../../../src/core/theory/pitch';

const ROOTS = ['C', 'C#', 'Db', 'D', 'D#', 'Eb', 'E', 'F', 'F#', 'Gb', 'G', 'G#', 'Ab', 'A', 'Bb', 'B'];

/** The qualities of the built-in forms first, then those a typed chart may hold. */
const QUALITIES = [
  ...['7', 'm7', 'dim7', '7b9', 'm7b5'],
  ...['', 'm', 'dim', 'aug', 'sus4', '7sus4', '6', 'm6', 'maj7', 'mMaj7', '9', 'm9', 'maj9', '6add9', 'm69'],
  ...['11', 'm11', '13', '7b5', '7#5', '7#9', '7#11', 'add9', '5'],
];

const everyChord = ROOTS.flatMap((root) => QUALITIES.map((quality) => root + quality));

describe('chord tones and degrees', () => {
  // Second opinion: the chord-symbol library 4.0.0 (MIT), which has its own interval tables.
  it('agree with chord-symbol for every root and quality', () => {
    const parse = chordParserFactory();
    for (const symbol of everyChord) {
      const theirs = parse(symbol);
      if (!('normalized' in theirs)) throw new Error(`chord-symbol does not read ${symbol}`);
      const ours = readSymbol(symbol);
      const degrees = (ours?.tones ?? []).map(({ degree }) => (degree === 'R' ? '1' : degree));
      expect(degrees, symbol).toEqual(theirs.normalized.intervals);
      expect(
        ours?.tones.map(({ pitchClass }) => pitchClass),
        symbol,
      ).toEqual(theirs.normalized.notes.map(pitchClassOf));
    }
  });

  it('agree with chord-symbol about slash chords', () => {
    const parse = chordParserFactory();
    for (const symbol of ['C7/E', 'G7/B', 'F#m7/E', 'Bb7/D', 'D/F#']) {
      const theirs = parse(symbol);
      if (!('normalized' in theirs)) throw new Error(`chord-symbol does not read ${symbol}`);
      expect(readSymbol(symbol)?.bass, symbol).toBe(pitchClassOf(theirs.normalized.bassNote));
    }
  });
});

describe('spelling', () => {
  // tonal 6.4.3 spells by letter; our own spelling goes by degree tables, so the two meet here.
  it('agrees with tonal for every root and quality', () => {
    for (const symbol of everyChord) {
      expect(
        readSymbol(symbol)?.tones.map(({ name }) => name),
        symbol,
      ).toEqual(TonalChord.get(symbol).notes);
    }
  });

  // Letter rule: a third skips one letter, a seventh is the letter below the root (any theory primer).
  it.each([
    ['Gb7', 'Gb Bb Db Fb'],
    ['F7', 'F A C Eb'],
    ['F#7', 'F# A# C# E'],
    ['C#7', 'C# E# G# B'],
    ['Db7', 'Db F Ab Cb'],
    ['Bdim7', 'B D F Ab'],
    ['G#7', 'G# B# D# F#'],
    ['Abm7', 'Ab Cb Eb Gb'],
  ])('%s is %s', (symbol, names) => {
    expect(
      readSymbol(symbol)
        ?.tones.map(({ name }) => name)
        .join(' '),
    ).toBe(names);
  });
});

describe('guide tones', () => {
  // Definition: the third and the seventh; I7, IV7 and V7 of G worked out by hand.
  it.each([
    ['G7', 'B F'],
    ['C7', 'E Bb'],
    ['D7', 'F# C'],
  ])('of %s are %s', (symbol, names) => {
    const chord = readSymbol(symbol);
    expect(
      chord &&
        guideTones(chord)
          .map(({ name }) => name)
          .join(' '),
    ).toBe(names);
  });
});
