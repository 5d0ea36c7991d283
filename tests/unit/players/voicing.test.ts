import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chordShape } from '../../../src/core/players/chord-scale';
import {
  COMPING_REGISTER,
  createVoicer,
  movement,
  ROOMY_REGISTER,
  roomFor,
  voicingsOf,
} from '../../../src/core/players/voicing';
import { guideTones, readSymbol } from '../../../src/core/theory/chords';
import { createRandom } from '../../../src/core/theory/random';

const SYMBOLS = [
  'C7',
  'Gm7',
  'Dm7b5',
  'F#dim7',
  'Ebmaj7',
  'A7b9',
  'D7#9',
  'G13',
  'Bb9',
  'E7sus4',
  'Am6',
  'C',
  'Fm',
  'Gaug',
];

const chordOf = (symbol: string) => {
  const chord = readSymbol(symbol);
  if (chord === null) throw new Error(`Not a chord: ${symbol}`);
  return chord;
};

describe('the shape of a chord', () => {
  it.each([
    ['C7', [0, 4, 7, 10], 4, 7, 10, [0, 2, 4, 5, 7, 9, 10]],
    ['Cm7', [0, 3, 7, 10], 3, 7, 10, [0, 2, 3, 5, 7, 9, 10]],
    ['Cmaj7', [0, 4, 7, 11], 4, 7, 11, [0, 2, 4, 5, 7, 9, 11]],
    ['Cm7b5', [0, 3, 6, 10], 3, 6, 10, [0, 1, 3, 5, 6, 8, 10]],
    ['Cdim7', [0, 3, 6, 9], 3, 6, 9, [0, 2, 3, 5, 6, 8, 9]],
    ['C7sus4', [0, 5, 7, 10], 5, 7, 10, [0, 2, 5, 7, 9, 10]],
    ['C6', [0, 4, 7, 9], 4, 7, null, [0, 2, 4, 5, 7, 9, 10]],
  ])('%s', (symbol, tones, third, fifth, seventh, scale) => {
    expect(chordShape(chordOf(symbol))).toMatchObject({ tones, third, fifth, seventh, scale });
  });
});

describe.each(SYMBOLS)('voicings of %s', (symbol) => {
  const chord = chordOf(symbol);

  it.each(['shell', 'plain', 'rich'] as const)(
    '%s: hold the guide tones, stay in register, foreign to nothing',
    (colour) => {
      for (const register of [COMPING_REGISTER, ROOMY_REGISTER, roomFor(62), roomFor(55)]) {
        const voicings = voicingsOf(chord, colour, register);
        expect(voicings.length).toBeGreaterThan(0);
        for (const pitches of voicings) {
          const classes = pitches.map((pitch) => pitch % 12);
          for (const tone of guideTones(chord)) {
            if (tone.degree !== '6') expect(classes).toContain(tone.pitchClass);
          }
          expect(Math.min(...pitches)).toBeGreaterThanOrEqual(register.low);
          expect(Math.max(...pitches)).toBeLessThanOrEqual(register.high);
          expect(new Set(classes).size).toBe(pitches.length);
          expect(pitches).toEqual(pitches.toSorted((a, b) => a - b));
        }
      }
    },
  );
});

const PLAIN = { colour: 'plain', top: null, anew: false } as const;

describe('voice leading', () => {
  it('measures movement voice by voice', () => {
    expect(movement([50, 53, 59], [50, 52, 58])).toBe(2);
    expect(movement([53, 59], [50, 52, 58])).toBe(3 + 1 + 1);
  });

  it('moves on average under two semitones a voice between any dominant chords a fourth or fifth apart', () => {
    const roots = ['C', 'F', 'Bb', 'Eb', 'Ab', 'Db', 'Gb', 'B', 'E', 'A', 'D', 'G'];
    fc.assert(
      fc.property(fc.nat(), fc.constantFrom(1, 11), (seed, turn) => {
        const voicer = createVoicer(createRandom(seed), COMPING_REGISTER);
        let before: readonly number[] | null = null;
        let moved = 0;
        for (let i = 0; i <= 12; i += 1) {
          const next = voicer(before, chordOf(`${roots[(i * turn) % 12]}7`), PLAIN);
          if (before !== null) moved += movement(before, next) / next.length;
          before = next;
        }
        expect(moved / 12).toBeLessThan(2);
      }),
      { numRuns: 30 },
    );
  });

  it('comes near the top note asked for, on average higher when asked for higher', () => {
    const mean = (top: number): number => {
      const tops = Array.from({ length: 30 }, (_, seed) =>
        createVoicer(createRandom(seed), COMPING_REGISTER)([52, 59, 62], chordOf('C7'), { ...PLAIN, top }).at(
          -1,
        ),
      );
      return tops.reduce<number>((sum, each) => sum + (each ?? 0), 0) / tops.length;
    };
    expect(mean(63)).toBeGreaterThan(mean(58) + 0.5);
    expect(mean(68)).toBeGreaterThan(mean(63) + 1);
  });

  it('asked anew, finds another voicing of the same chord', () => {
    for (let seed = 0; seed < 20; seed += 1) {
      const voicer = createVoicer(createRandom(seed), COMPING_REGISTER);
      const first = voicer(null, chordOf('G7'), PLAIN);
      expect(voicer(first, chordOf('G7'), { ...PLAIN, anew: true })).not.toEqual(first);
    }
  });
});

it.each(['shell', 'plain', 'rich'] as const)(
  'the five chord of a minor key stands over its own root: no %s voicing has a flat ninth for the bass to take away',
  (colour) => {
    const voicings = voicingsOf(chordOf('E7'), colour, COMPING_REGISTER, true);
    expect(voicings.length).toBeGreaterThan(3);
    expect(voicings.filter((pitches) => pitches.some((pitch) => pitch % 12 === 5))).toEqual([]);
  },
);
