import { describe, expect, it } from 'vitest';
import { chordOf } from '../../../src/core/theory/chords';
import { degreeText, ENGLISH } from '../../../src/core/theory/note-names';
import { noteNames } from '../../../src/core/theory/other-names';

const GERMAN = noteNames('german');
const DO = noteNames('do');
const IN_G = noteNames('numbers', 'G');

describe('English names in sentences', () => {
  it.each([
    ['Bb', 'B♭'],
    ['F##', 'F𝄪'],
    ['Ebb', 'E𝄫'],
    ['Bb4', 'B♭4'],
    ['b7', '♭7'],
    ['bb7', '𝄫7'],
    ['#11', '♯11'],
    ['bVI7', '♭VI7'],
    ['Song in Bb, Eb harp', 'Song in B♭, E♭ harp'],
    ['C7b9', 'C7♭9'],
    ['above the number', 'above the number'],
    ['G', 'G'],
  ])('%s → %s', (ascii, pretty) => {
    expect(ENGLISH.text(ascii)).toBe(pretty);
  });

  it('leave what has its glyphs already as it is', () => {
    const shown = 'No F♯ between holes 2 and 9, except 5 overblow';
    expect(ENGLISH.text(shown)).toBe(shown);
  });
});

describe('sentences of the program in other names', () => {
  it.each([
    ['No B♭ between 4B and 6D, nor B', 'No B between 4B and 6D, nor H', 'No Si♭ between 4B and 6D, nor Si'],
    [
      'C13♯11: the band plays the 3 and ♭7',
      'C13♯11: the band plays the 3 and ♭7',
      'Do13♯11: the band plays the 3 and ♭7',
    ],
    [
      'Blow 1-2-3: Bb major, root lowest',
      'Blow 1-2-3: B major, root lowest',
      'Blow 1-2-3: Si♭ major, root lowest',
    ],
    ['C–D–B', 'C–D–H', 'Do–Re–Si'],
    [
      'B♭m7 goes to B°7, then Bmaj7 and Bsus4',
      'Bm7 goes to H°7, then Hmaj7 and Hsus4',
      'Si♭m7 goes to Si°7, then Simaj7 and Sisus4',
    ],
    ['You will need an A harp.', 'You will need an A harp.', 'You will need a La harp.'],
    ['a Bb harp, a B harp', 'a B harp, an H harp', 'a Si♭ harp, a Si harp'],
    ['In bar 2 of “A”, aim for B♭', 'In bar 2 of “A”, aim for B', 'In bar 2 of “A”, aim for Si♭'],
    ['Bar 5, Beats, Draw: Every Aim', 'Bar 5, Beats, Draw: Every Aim', 'Bar 5, Beats, Draw: Every Aim'],
  ])('%s', (sentence, german, fixedDo) => {
    expect([GERMAN.text(sentence), DO.text(sentence)]).toEqual([german, fixedDo]);
  });
});

describe('chords', () => {
  const symbols = [
    chordOf({ root: 'Bb', quality: '7', bass: 'D' }),
    chordOf({ root: 'B', quality: 'm7b5' }),
    chordOf({ root: 'D', quality: '9' }),
  ];

  it('carry root and bass by the names that were chosen', () => {
    expect(symbols.map(GERMAN.chord)).toEqual(['B7/D', 'Hø7', 'D9']);
    expect(symbols.map(DO.chord)).toEqual(['Si♭7/Re', 'Siø7', 'Re9']);
  });

  it('with a number keep it apart from the figures after it', () => {
    expect(symbols.map(IN_G.chord)).toEqual(['♭3⁷/5', '3ø7', '5⁹']);
    expect(IN_G.text('None of D7')).toBe('None of 5⁷');
  });
});

describe('keys, harps and octaves', () => {
  it('keep their letters where notes are numbers', () => {
    expect(IN_G.key('Low F harp')).toBe('Low F harp');
    expect(IN_G.text('B major on the Bb harp')).toBe('3 major on the B♭ harp');
    expect(IN_G.pitch('Bb4')).toBe('♭3₄');
  });

  it('take the names of the system otherwise', () => {
    expect(['Bb minor', 'Low F harp', 'B harp, natural minor'].map(GERMAN.key)).toEqual([
      'B minor',
      'Low F harp',
      'H harp, natural minor',
    ]);
    expect(DO.pitch('Bb4')).toBe('Si♭4');
  });
});

it('degrees and numerals have their accidentals set', () => {
  expect(['b7', '#ivo7', 'bVI7', 'R'].map(degreeText)).toEqual(['♭7', '♯ivo7', '♭VI7', 'R']);
});
