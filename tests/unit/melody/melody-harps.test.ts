import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EVERY_TECHNIQUE, NATURAL_NOTES } from '../../../src/core/harp/reach';
import { RICHTER } from '../../../src/core/harp/tunings';
import { harpsForMelody, readMelody } from '../../../src/core/melody/melody-harps';
import { printPhrase } from '../../../src/core/phrase/print-phrase';

const SEARCH = { tuning: RICHTER, technique: NATURAL_NOTES, meter: '4/4' } as const;

describe('a melody in note names', () => {
  it('is read with lengths, signs and rests, and says what it did not read', () => {
    const { notes, unread } = readMelody('C4:q Bb3:e F#5 r:h | x9 G4:z');
    expect(notes).toEqual([
      { length: 480, key: 60 },
      { length: 240, key: 58 },
      { length: 240, key: 78 },
      { length: 960, key: null },
    ]);
    expect(unread).toEqual(['x9', 'G4:z']);
  });

  it('puts a major scale on the harp of its key, holes 4 to 7 (the published layout of the middle octave)', () => {
    // Wikipedia, "Richter-tuned harmonica": the complete major scale of the label's key lies on holes 4 to 7, blow and
    // draw in turn, turning round at the top.
    const [best] = harpsForMelody(readMelody('C5 D5 E5 F5 G5 A5 B5 C6').notes, SEARCH);
    expect(best).toMatchObject({ harpKey: 0, position: 1, octaves: 0, missing: [] });
    expect(best && printPhrase(best.phrase, 'letters')).toBe('4B:q 4D 5B 5D | 6B 6D 7D 7B');
  });

  it('names what no natural note of a harp gives, and finds it where bends are had', () => {
    const notes = readMelody('G4 Bb4 B4 D5 G4').notes;
    const onC = (technique: typeof NATURAL_NOTES) =>
      harpsForMelody(notes, { ...SEARCH, technique }).find(({ harpKey }) => harpKey === 0);
    // The flat third of G is no natural note of a C harp: hole 3 draw bent a semitone gives it.
    expect(onC(NATURAL_NOTES)?.missing).toEqual([{ key: 70, isOff: true, octave: null, near: 71 }]);
    expect(onC(EVERY_TECHNIQUE)).toMatchObject({ missing: [], position: 2 });
  });

  it('never throws, gives twelve harps in order, and counts every note as played or missing', () => {
    const word = fc.constantFrom('C4', 'Eb5:e', 'r', 'F#3:h', 'x', 'G', '|', 'B9', 'c2:w');
    const text = fc.oneof(
      fc.string(),
      fc.array(word, { maxLength: 20 }).map((words) => words.join(' ')),
    );
    fc.assert(
      fc.property(text, (source) => {
        const { notes } = readMelody(source);
        const harps = harpsForMelody(notes, SEARCH);
        const sounding = notes.filter(({ key }) => key !== null);
        expect(harps).toHaveLength(sounding.length === 0 ? 0 : 12);
        harps.forEach(({ missing, phrase, octaves }, i) => {
          expect(missing.length).toBeGreaterThanOrEqual(harps[i - 1]?.missing.length ?? 0);
          const silent = sounding.filter(({ key }) =>
            missing.some((each) => key !== null && each.key === key + 12 * octaves),
          ).length;
          expect(phrase.notes.length + silent).toBe(sounding.length);
        });
      }),
      { numRuns: 60 },
    );
  });
});
