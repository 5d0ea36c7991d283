import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLookUp } from '../../../src/core/song/look-up';

const namesOf = (text: string, tonic = 'G'): readonly string[] => {
  const read = readLookUp(text, tonic);
  return read === null || read.kind === 'unread' ? [] : read.tones.map(({ name }) => name);
};

describe('looking a chord up', () => {
  // Spelled by thirds and by scale steps, as any primer of harmony does (common practice, no source).
  it.each([
    ['Abm', ['Ab', 'Cb', 'Eb']],
    ['abm', ['Ab', 'Cb', 'Eb']],
    ['A♭m', ['Ab', 'Cb', 'Eb']],
    [' F#m7b5 ', ['F#', 'A', 'C', 'E']],
    ['IV7', ['C', 'E', 'G', 'Bb']],
    ['D dorian', ['D', 'E', 'F', 'G', 'A', 'B', 'C']],
    ['d Dor', ['D', 'E', 'F', 'G', 'A', 'B', 'C']],
    ['B♭ minor blues', ['Bb', 'Db', 'Eb', 'Fb', 'F', 'Ab']],
    ['E natural minor scale', ['E', 'F#', 'G', 'A', 'B', 'C', 'D']],
    ['F# phrygian dominant', ['F#', 'G', 'A#', 'B', 'C#', 'D', 'E']],
  ])('reads %s', (text, names) => {
    expect(namesOf(text)).toEqual(names);
  });

  it('keeps the spelling of a symbol whatever the key of the song', () => {
    for (const tonic of ['C', 'F#', 'Db', 'B']) expect(namesOf('Abm', tonic)).toEqual(['Ab', 'Cb', 'Eb']);
  });

  it('offers a scale that holds every tone of the chord', () => {
    const read = readLookUp('Abm', 'G');
    if (read?.kind !== 'chord' || read.scale === null) throw new Error('a chord with a scale');
    const held = new Set(read.scale.tones.map(({ pitchClass }) => pitchClass));
    expect(read.tones.filter(({ pitchClass }) => !held.has(pitchClass))).toEqual([]);
  });

  it('says nothing of nothing, and what to do about what it cannot read', () => {
    expect(readLookUp('  ', 'G')).toBeNull();
    expect(readLookUp('xyz', 'G')).toEqual({
      kind: 'unread',
      sentence:
        '“xyz” is no chord or scale known here. Type a chord like A♭m or F♯7, or a scale like D dorian.',
    });
    expect(readLookUp('Hm', 'G')).toMatchObject({
      kind: 'unread',
      sentence: expect.stringMatching(/Did you mean Bm\?/),
    });
  });

  it('never throws, whatever is typed, and repeats little of it', () => {
    const piece = fc.constantFrom(
      'A',
      'b',
      '#',
      '♭',
      'm',
      '7',
      ' ',
      'dorian',
      '(',
      '/',
      'sus',
      'IV',
      'o',
      '-',
      '13',
    );
    const typed = fc.oneof(
      fc.string({ maxLength: 200 }),
      fc.array(piece, { maxLength: 30 }).map((pieces) => pieces.join('')),
    );
    fc.assert(
      fc.property(typed, fc.constantFrom('C', 'Gb', 'F#'), (text, tonic) => {
        const read = readLookUp(text, tonic);
        if (read === null) expect(text.trim()).toBe('');
        else if (read.kind === 'unread') expect(read.sentence.length).toBeLessThan(180);
        else expect(read.tones.length).toBeGreaterThan(1);
      }),
      { numRuns: 2000 },
    );
  });
});
