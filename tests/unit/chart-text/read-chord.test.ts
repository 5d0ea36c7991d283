import { describe, expect, it } from 'vitest';
import { type ReadChord, readChord } from '../../../src/core/chart-text/read-chord';
import { ENGLISH } from '../../../src/core/theory/note-names';

const tones = (read: ReadChord | null): string | undefined =>
  read?.chord.tones.map(({ name }) => name).join(' ');

const bass = (read: ReadChord | null): string | null =>
  read && `${ENGLISH.chord(read.chord)} over ${read.chord.bass}`;

// Tones by chord arithmetic: ♭5 and ♯5 stand instead of the fifth, tensions above a triad are added to it.
describe('brackets that hold a sign', () => {
  it.each([
    ['G(#5)', 'Gaug', 'G B D#'],
    ['C(b5)', 'C(b5)', 'C E Gb'],
    ['C(♭5)', 'C(b5)', 'C E Gb'],
    ['C(#5)', 'Caug', 'C E G#'],
    ['C(+5)', 'Caug', 'C E G#'],
    ['C(-5)', 'C(b5)', 'C E Gb'],
    ['G(b9)', 'Gaddb9', 'G B D Ab'],
    ['C(#11)', 'Cadd#11', 'C E G F#'],
    ['F(b5)/A', 'F(b5)/A', 'F A Cb'],
    ['Bb(b5)', 'Bb(b5)', 'Bb D Fb'],
    ['F#(#9)', 'F#add#9', 'F# A# C# G##'],
    ['C(b9, #11)', 'Caddb9add#11', 'C E G Db F#'],
    ['Cm(b6)', 'Cmaddb6', 'C Eb G Ab'],
    ['C7(b9)(13)', 'C13b9', 'C E G Bb Db A'],
    ['C7 (b9)', 'C7b9', 'C E G Bb Db'],
    ['(C7(b9)/E)', 'C7b9/E', 'C E G Bb Db'],
    ['I(b5)', 'C(b5)', 'C E Gb'],
    ['bIII(#5)', 'Ebaug', 'Eb G B'],
  ])('%s is %s', (text, symbol, expected) => {
    const read = readChord(text, 'C');
    expect([read?.chord.symbol, tones(read), read?.rest]).toEqual([symbol, expected, '']);
  });

  it('leaves what it does not know off the chord, never off the root', () => {
    expect(readChord('G(#15)', 'C')).toMatchObject({ chord: { symbol: 'G' }, rest: '#15' });
    expect(readChord('C12b9b9b9b9b9b9b9b9', 'C')).toBeNull();
    expect(readChord('C(b15)/E', 'C')).toMatchObject({ chord: { symbol: 'C/E' }, rest: 'b15' });
  });
});

describe('a flat fifth leaves no natural one', () => {
  it.each([
    ['C7b5b9 C7b9b5 C7(b5b9) C7(b9,b5) C7-5-9 C7(♭9♭5)', 'C E Gb Bb Db'],
    ['C7b5#9 C7#9b5 C7(#9)(b5) C7-5+9 C7+9-5', 'C E Gb Bb D#'],
    ['C7b5b13 C7b13b5', 'C E Gb Bb Ab'],
    ['C9b5b13 C9b13b5', 'C E Gb Bb D Ab'],
    ['C13b5b9 C13b9b5 C7b5b9(13)', 'C E Gb Bb Db A'],
    ['C7b5b9b13 C7b9b13b5 C7b13b5b9', 'C E Gb Bb Db Ab'],
    ['C6b5 C6(b5)', 'C E Gb A'],
    ['Cmaj7b5 CM7b5 C△7(♭5) Cmaj7-5', 'C E Gb B'],
    ['Cø Cø7 Cm7b5 C-7-5 Cm7(♭5) Cmin7b5', 'C Eb Gb Bb'],
  ])('%s: %s', (spellings, expected) => {
    for (const text of spellings.split(' '))
      expect([text, tones(readChord(text, 'C'))]).toEqual([text, expected]);
  });
});

describe('chords that were taken for others', () => {
  it.each([
    ['C4', 'Csus4', 'C F G'],
    ['C7sus', 'C7sus4', 'C F G Bb'],
    ['Cmaj7#11', 'Cmaj7#11', 'C E G B F#'],
    ['CΔ#11', 'Cmaj7#11', 'C E G B F#'],
    ['C7(add13)', 'C7add13', 'C E G Bb A'],
    ['Cm7#5', 'Cm7#5', 'C Eb G# Bb'],
    ['Cm9#5', 'Cm9#5', 'C Eb G# Bb D'],
    ['C°9', 'Cdim9', 'C Eb Gb Bbb D'],
    ['Cdim(maj7)', 'CdimMaj7', 'C Eb Gb B'],
    ['Calt', 'C7#5#9', 'C E G# Bb D#'],
    ['C7omit5', 'C7no5', 'C E Bb'],
    ['ii7add11', 'Dm7add11', 'D F A C G'],
    ['C𝄪7', 'D7', 'D F# A C'],
  ])('%s is %s', (text, symbol, expected) => {
    const read = readChord(text, 'C');
    expect([read?.chord.symbol, tones(read)]).toEqual([symbol, expected]);
  });

  it('shows the seventh of a major seventh with sharp eleventh', () => {
    const read = readChord('Cmaj7#11', 'C');
    expect(read && ENGLISH.chord(read.chord)).toBe('C△7♯11');
  });
});

describe('a degree after the slash of a numeral', () => {
  it.each([
    ['IV/V', 'F7/G'],
    ['IVmaj/V', 'F/G'],
    ['ii7/V', 'Dm7/G'],
    ['bVII/I', 'Bb7/C'],
    ['Imaj/bVII', 'C/Bb'],
    ['V7/ii', 'A7'],
    ['V7b9/ii', 'A7b9'],
    ['V/V', 'D7'],
    ['vii°7/V', 'F#dim7'],
    ['viiø7/ii', 'C#m7b5'],
    ['Imaj7/V', 'Cmaj7/G'],
  ])('%s in C is %s', (text, symbol) => {
    expect(readChord(text, 'C')?.chord.symbol).toBe(symbol);
  });
});

describe('a slash bass', () => {
  it.each([
    ['F/B', 'F/B over 11'],
    ['Bb/E', 'B♭/E over 4'],
    ['C/F#', 'C/F♯ over 6'],
    ['C/Gb', 'C/G♭ over 6'],
    ['C/F♯', 'C/F♯ over 6'],
    ['F/Cb', 'F/B over 11'],
    ['C7/A#', 'C7/B♭ over 10'],
    ['Db/Cb', 'D♭/C♭ over 11'],
    ['Abm/Cb', 'A♭m/C♭ over 11'],
    ['E/G#', 'E/G♯ over 8'],
    ['C#7/E#', 'C♯7/E♯ over 5'],
    ['D#7/G', 'D♯7/G over 7'],
    ['C#/Eb', 'C♯/E♭ over 3'],
    ['Am7/F#', 'Am7/F♯ over 6'],
    ['C/B#', 'C over 0'],
    ['C7/(E)', 'C7/E over 4'],
  ])('%s is %s', (text, expected) => {
    expect(bass(readChord(text, 'C'))).toBe(expected);
  });

  // The seventh of a diminished seventh chord is a diminished seventh: nine semitones, seven letters.
  it.each([
    ['F#o7/Eb', 'F♯°7/E♭ over 3', 'F# A C Eb'],
    ['G#o7/F', 'G♯°7/F over 5', 'G# B D F'],
    ['Bdim7/Ab', 'B°7/A♭ over 8', 'B D F Ab'],
    ['C°7/Bbb', 'C°7/A over 9', 'C Eb Gb Bbb'],
    ['C°7/A', 'C°7/A over 9', 'C Eb Gb Bbb'],
    ['#ivo7/bb7', 'F♯°7/E♭ over 3', 'F# A C Eb'],
  ])('a diminished seventh over its seventh: %s', (text, expected, spelled) => {
    for (const tonic of ['C', 'G', 'Eb']) {
      const read = readChord(text, text.startsWith('#') ? 'C' : tonic);
      expect([bass(read), tones(read)]).toEqual([expected, spelled]);
    }
  });
});
