import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Grips, gripsFor } from '../../../src/core/fit/grips';
import { intervalName, nameGroup } from '../../../src/core/fit/group-name';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { NATURAL_NOTES } from '../../../src/core/harp/reach';
import { RICHTER, TUNINGS } from '../../../src/core/harp/tunings';
import { readSymbol } from '../../../src/core/theory/chords';
import { PITCH_CLASSES } from '../../../src/core/theory/pitch';
import { plainName } from '../../../src/core/theory/spelling';
import { asMidi, asPitchClass, type PitchClass } from '../../../src/core/theory/units';

const C_HARP = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

const IN_C = (pitchClass: PitchClass): string => plainName(pitchClass, 'C');

const gripsOver = (symbol: string, off: readonly string[] = []): Grips => {
  const chord = readSymbol(symbol);
  if (chord === null) throw new Error(`no chord ${symbol}`);
  return gripsFor({ chord, harp: C_HARP, technique: { ...NATURAL_NOTES, off } });
};

describe('gripsFor', () => {
  it('names chords with their lowest tone and splits by interval', () => {
    const sentences = gripsOver('G7').fitting.map(({ label, name }) => `${label}: ${name}`);
    expect(sentences).toEqual(
      expect.arrayContaining([
        'draw 2-3-4: G major, root lowest',
        'draw 2-3-4-5: G dominant seventh, root lowest',
        'draw 1-2-3: G major, 5 lowest',
        'draw 1+4: octave D',
        'blow 3+6: octave G',
        'draw 2+5: minor seventh',
        'draw 3-4: minor third',
      ]),
    );
    expect(sentences.slice(0, 4)).toEqual([
      'draw 2-3-4-5: G dominant seventh, root lowest',
      'draw 2-3-4: G major, root lowest',
      'blow 3+6: octave G',
      'blow 6+9: octave G',
    ]);
  });

  it.each([
    ['the chord with its fifth lowest', 'draw 1-2-3'],
    ['the octave of its fifth', 'draw 1+4'],
  ])('puts %s before five holes and chords without the root', (_, label) => {
    const labels = gripsOver('G7').fitting.map((each) => each.label);
    expect(labels).toContain(label);
    for (const later of ['draw 1-2-3-4-5', 'draw 3-4-5', 'draw 7-8-9']) {
      expect(labels.indexOf(later)).toBeGreaterThan(labels.indexOf(label));
    }
  });

  it('names the foreign note of groups that almost fit', () => {
    const near = gripsOver('D7').near.map(({ label, name, foreign }) => [
      label,
      name,
      foreign[0]?.name,
      foreign[0]?.hole,
    ]);
    expect(near).toContainEqual(['draw 4-5-6', 'D minor, root lowest', 'F', 5]);
  });

  it('leaves out groups with a sound that is switched off', () => {
    expect(gripsOver('G7', ['2D']).fitting.map(({ label }) => label)).not.toContain('draw 2-3-4');
  });

  it('gives one breath, at most five holes, and only what the chord holds, for any tuning and chord', () => {
    const symbols = ['7', 'm7', 'dim7', 'm7b5', '7b9', ''];
    fc.assert(
      fc.property(
        fc.constantFrom(...TUNINGS),
        fc.constantFrom(...PITCH_CLASSES),
        fc.constantFrom('C', 'Eb', 'F#', 'A'),
        fc.constantFrom(...symbols),
        (tuning, key, root, quality) => {
          const harp = buildHarp({ tuning, key, octave: 0 });
          const chord = readSymbol(root + quality);
          if (chord === null) throw new Error(`no chord ${root}${quality}`);
          const classes = new Set(chord.tones.map(({ pitchClass }) => pitchClass));
          const { fitting, near } = gripsFor({ chord, harp });
          for (const grip of [...fitting, ...near]) {
            const outside = grip.sounds.filter(({ pitch }) => !classes.has(asPitchClass(pitch)));
            expect(outside.map(({ hole }) => hole)).toEqual(grip.foreign.map(({ hole }) => hole));
            expect(
              grip.sounds.every((sound) => sound.breath === grip.breath && sound.technique === 'natural'),
            ).toBe(true);
            expect(grip.sounds.map(({ hole }) => hole)).toEqual(grip.holes);
            const width = (grip.holes.at(-1) ?? 0) - (grip.holes[0] ?? 0) + 1;
            expect(width).toBeLessThanOrEqual(5);
            expect(grip.holes).toHaveLength(grip.kind === 'split' ? 2 : width);
          }
          expect(fitting.every(({ foreign }) => foreign.length === 0)).toBe(true);
          expect(near.every(({ foreign }) => foreign.length === 1)).toBe(true);
          const scores = fitting.map(({ score }) => score);
          expect(scores).toEqual([...scores].sort((a, b) => b - a));
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('names of groups', () => {
  it.each([
    [0, 'unison'],
    [7, 'fifth'],
    [12, 'octave'],
    [16, 'major third and an octave'],
    [24, 'two octaves'],
    [27, 'minor third and two octaves'],
  ])('%i semitones is a %s', (semitones, name) => {
    expect(intervalName(semitones)).toBe(name);
  });

  it.each([
    [[60, 72], 'octave C', null],
    [[60, 64, 67, 72], 'C major, root lowest', 'C'],
    [[64, 67, 72], 'C major, 3 lowest', 'C'],
    [[62, 65, 69], 'D minor, root lowest', 'Dm'],
    [[60, 63, 66, 69], 'C diminished seventh, root lowest', 'Cdim7'],
    [[60, 62, 67, 73], 'C–D–G–Db', null],
    [[60, 60], 'unison C', null],
  ] as const)('%j is %s', (pitches, text, symbol) => {
    expect(nameGroup(pitches.map(asMidi), IN_C)).toMatchObject({ text, symbol });
  });

  it('needs two notes', () => {
    expect(() => nameGroup([asMidi(60)], IN_C)).toThrow('2 notes or more, got 1');
    expect(() => intervalName(-1)).toThrow('0 semitones or more, got -1');
  });
});
