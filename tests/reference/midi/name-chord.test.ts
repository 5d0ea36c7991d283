import { chordParserFactory } from 'chord-symbol';
import { Chord, Note } from 'tonal';
import { describe, expect, it } from 'vitest';
import { nameChord } from '../../../src/core/midi/name-chord';
import { tonesWithBass } from '../../../src/core/theory/chords';
import { inSoak, SOAK_TIMEOUT } from '../../helpers/soak';

const parse = chordParserFactory();
const NAMES = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B'];
const sorted = (classes: readonly number[]): string =>
  [...new Set(classes.map((each) => ((each % 12) + 12) % 12))].sort((a, b) => a - b).join(' ');

/** All sets of pitch classes that are not empty, each as its members. */
const SETS = Array.from({ length: 4095 }, (_, i) =>
  NAMES.flatMap((_, pc) => ((i + 1) & (1 << pc) ? [pc] : [])),
);
const TRIED = inSoak(
  SETS,
  SETS.filter((_, i) => i % 29 === 0),
);

/** Keys held: the bass below, the others above it. */
const keysOf = (set: readonly number[], bass: number): readonly number[] =>
  set.map((pc) => (pc === bass ? 36 : 60) + pc);

/** Qualities that everybody writes, as tonal calls them: where it has one of these on the bass, nobody asks further. */
const PLAIN = ['M', 'm', '7', 'm7', 'maj7', 'dim', 'dim7', 'm7b5', 'aug', 'sus4', '7sus4', '9', 'm9', 'maj9'];

// Second opinions: tonal 6.4.3 names sets by a dictionary of its own, chord-symbol 4.0.0 reads names by its own rules.
describe('the name of a held chord', () => {
  it('holds exactly the keys that are down, whichever is the lowest', { timeout: SOAK_TIMEOUT }, () => {
    let named = 0;
    for (const set of TRIED) {
      for (const bass of set) {
        const chord = nameChord(keysOf(set, bass), 'C');
        if (chord === null) continue;
        named += 1;
        expect(sorted(tonesWithBass(chord).map(({ pitchClass }) => pitchClass))).toBe(sorted(set));
        expect(chord.bass).toBe(bass);
      }
    }
    expect(named).toBeGreaterThan(TRIED.length * 3);
  });

  it('is there for every set that tonal has a name for, and the same where that is a plain one', {
    timeout: SOAK_TIMEOUT,
  }, () => {
    let theirs = 0;
    let plain = 0;
    const unlike: string[] = [];
    for (const set of TRIED.filter(({ length }) => length > 2)) {
      for (const bass of set) {
        const found = Chord.detect([bass, ...set.filter((pc) => pc !== bass)].map((pc) => NAMES[pc] ?? ''));
        if (found.length === 0) continue;
        theirs += 1;
        const chord = nameChord(keysOf(set, bass), 'C');
        if (chord === null) unlike.push(`no name for ${found.join(' ')}`);
        for (const name of found) {
          const { tonic, aliases } = Chord.get(name);
          if (name.includes('/') || tonic === null || !aliases.some((each) => PLAIN.includes(each))) continue;
          plain += 1;
          if (chord?.root !== Note.chroma(tonic)) unlike.push(`${chord?.symbol} for ${name}`);
        }
      }
    }
    expect(unlike).toEqual([]);
    expect(theirs).toBeGreaterThan(TRIED.length / 3);
    expect(plain).toBeGreaterThan(TRIED.length / 40);
  });

  it('is read by another library as the same notes, wherever that reads it', {
    timeout: SOAK_TIMEOUT,
  }, () => {
    let read = 0;
    let same = 0;
    for (const set of TRIED.filter(({ length }) => length > 2 && length < 7)) {
      const chord = nameChord(keysOf(set, set[0] ?? 0), 'C');
      const parsed = chord === null ? null : parse(chord.symbol.replace(/\/.*/, ''));
      if (chord === null || parsed === null || !('normalized' in parsed)) continue;
      // They differ on the ninths of diminished chords, 13ths of minor ones and maj♯11, as `chord-symbols.test.ts` says.
      if (/dim.*(9|11)|m.*13|maj.*#11/.test(chord.symbol)) continue;
      read += 1;
      const root = Note.chroma(parsed.normalized.rootNote) ?? 0;
      const notes = sorted(parsed.normalized.semitones.map((each) => each + root));
      if (notes === sorted(chord.tones.map(({ pitchClass }) => pitchClass))) same += 1;
    }
    expect(read).toBeGreaterThan(TRIED.length / 5);
    expect(same / read).toBeGreaterThan(0.9);
  });

  // Handbook spellings (common practice, no source).
  it.each([
    [[55, 59, 62, 65], 'G7'],
    [[52, 60, 67], 'C/E'],
    [[48, 52, 55, 57], 'C6'],
    [[45, 48, 52, 55], 'Am7'],
    [[48, 58, 64], 'C7no5'],
    [[46, 56, 62, 67], 'Bb7add13no5'],
    [[47, 50, 53, 57], 'Bm7b5'],
    [[48, 53, 55, 58], 'C7sus4'],
    [[54, 57, 60, 63], 'F#dim7'],
  ])('is what a player would say: %j is %s', (keys, symbol) => {
    expect(nameChord(keys, 'G')?.symbol).toBe(symbol);
  });

  it('is none for fewer than three different notes', () => {
    expect(nameChord([48, 60, 55], 'C')).toBeNull();
    expect(nameChord([], 'C')).toBeNull();
  });
});
