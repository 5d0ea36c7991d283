import { describe, expect, it } from 'vitest';
import { chordLines } from '../../../src/core/song/chord-ems';
import { readSymbol } from '../../../src/core/theory/chords';
import { ENGLISH } from '../../../src/core/theory/note-names';

const linesOf = (text: string) =>
  chordLines(
    text.split(' ').map((symbol) => {
      const chord = readSymbol(symbol);
      if (chord === null) throw new Error(`No chord: ${symbol}`);
      return { chord };
    }),
    ENGLISH,
  );

describe('chord symbols in lines', () => {
  it.each(['G7', 'Bbm7', 'F#7', 'C/E', 'G7 C7'])('are not wanted for %s, which is short', (text) => {
    expect(linesOf(text)).toBeNull();
  });

  it.each(['C#m7b5/G#', 'Ebmaj7#11', 'Ab13sus4', 'Bbm7 Eb7', 'Dbm7 Gb7 Cm7 F7'])(
    'take less width for %s the more lines there are, and never less than its root',
    (text) => {
      const { one, two, three } = linesOf(text) ?? { one: 0, two: 0, three: 0 };
      expect(one).toBeGreaterThan(two);
      expect(two).toBeGreaterThanOrEqual(three);
      expect(three).toBeGreaterThan(1);
    },
  );

  it('are as wide as the widest of a bar', () => {
    expect(linesOf('G7 Ebmaj7#11')).toEqual(linesOf('Ebmaj7#11'));
  });
});
