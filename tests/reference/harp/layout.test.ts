import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import type { Breath, Harp } from '../../../src/core/harp/harp';
import { soundId } from '../../../src/core/harp/tab';
import { RICHTER } from '../../../src/core/harp/tunings';
import { keyName, pitchClassOf, pitchName } from '../../../src/core/theory/pitch';
import { hzOf } from '../../../src/core/theory/temperament';
import { asMidi } from '../../../src/core/theory/units';

const harpIn = (key: string, octave = 0): Harp =>
  buildHarp({ tuning: RICHTER, key: pitchClassOf(key), octave });
const C_HARP = harpIn('C');

const rowOf = (harp: Harp, breath: Breath): readonly number[] =>
  harp.reeds.filter((reed) => reed.breath === breath).map(({ pitch }) => pitch);

const namesOf = (harp: Harp, breath: Breath, tonic: string): string =>
  rowOf(harp, breath)
    .map((pitch) => pitchName(asMidi(pitch), tonic).replace(/\d/, ''))
    .join(' ');

describe('layout of the standard harp', () => {
  // OEIS A291810: semitones above the key, ordered 1 blow, 1 draw, 2 blow, 2 draw, … (natural notes only).
  const A291810 = [0, 2, 4, 7, 7, 11, 12, 14, 16, 17, 19, 21, 24, 23, 28, 26, 31, 29, 36, 33];

  it('is OEIS A291810 from C4', () => {
    const blow = rowOf(C_HARP, 'blow');
    const draw = rowOf(C_HARP, 'draw');
    expect(blow.flatMap((pitch, i) => [pitch - 60, (draw[i] ?? 0) - 60])).toEqual(A291810);
  });

  // Wikipedia, "Richter-tuned harmonica": 20 reeds give 19 different notes, 2 draw being 3 blow.
  it('has 19 different natural notes of 20 reeds in every key', () => {
    for (const key of ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B']) {
      expect(new Set(harpIn(key).reeds.map(({ pitch }) => pitch)).size).toBe(19);
    }
    expect(rowOf(C_HARP, 'draw')[1]).toBe(rowOf(C_HARP, 'blow')[2]);
  });

  // Wikibooks, "Harmonica/Harmonica Layouts and Alternate Tunings", whose key table prints two wrong notes: F for
  // the F# of an A harp's draw row and G# for the A# of a B harp's draw 3. The layout rule gives these.
  it('gives the draw rows of A and B harps', () => {
    expect(namesOf(harpIn('A'), 'draw', 'A')).toBe('B E G# B D F# G# B D F#');
    expect(namesOf(harpIn('B'), 'draw', 'B').split(' ')[2]).toBe('A#');
  });
});

describe('key ranges', () => {
  // Wikipedia, "Richter-tuned harmonica": G, Ab, A, Bb and B start below middle C, C on it, Db to F# above it.
  it.each([
    ['G', 55, 91],
    ['Ab', 56, 92],
    ['A', 57, 93],
    ['Bb', 58, 94],
    ['B', 59, 95],
    ['C', 60, 96],
    ['Db', 61, 97],
    ['D', 62, 98],
    ['Eb', 63, 99],
    ['E', 64, 100],
    ['F', 65, 101],
    ['F#', 66, 102],
  ])('%s harp: blow 1 is key %i, blow 10 is %i', (key, low, high) => {
    const blow = rowOf(harpIn(key), 'blow');
    expect([blow[0], blow[9]]).toEqual([low, high]);
    expect(keyName(harpIn(key).key, 'major')).toBe(key);
  });

  it('runs from 196.00 Hz to 2959.96 Hz', () => {
    expect(hzOf(asMidi(rowOf(harpIn('G'), 'blow')[0] ?? 0))).toBeCloseTo(196.0, 2);
    expect(hzOf(asMidi(rowOf(harpIn('F#'), 'blow')[9] ?? 0))).toBeCloseTo(2959.96, 2);
  });

  // Common practice, no source: a low F starts on F3, a high G on G4, a double low C two octaves under C4.
  it('has low, double low and high variants', () => {
    expect(rowOf(harpIn('F', -1), 'blow')[0]).toBe(53);
    expect(rowOf(harpIn('G', 1), 'blow')[0]).toBe(67);
    expect(rowOf(harpIn('C', -2), 'blow')[0]).toBe(36);
  });
});

describe('bends', () => {
  const bendsOf = (hole: number): readonly number[] =>
    C_HARP.sounds
      .filter((sound) => sound.hole === hole && sound.technique === 'bend')
      .map(({ pitch }) => pitch)
      .sort((a, b) => b - a);

  // Counts follow from "the pitch lies between the two natural notes" (J. Acoust. Soc. Am. 103(4), 1998,
  // doi 10.1121/1.421359); that working lists hold draw bends in 1–4 and 6 and blow bends in 8–10: "How to play the
  // full chromatic scale on a diatonic harmonica".
  it.each([
    [1, [61]],
    [2, [66, 65]],
    [3, [70, 69, 68]],
    [4, [73]],
    [5, []],
    [6, [80]],
    [7, []],
    [8, [87]],
    [9, [90]],
    [10, [95, 94]],
  ])('hole %i of a C harp bends to %j', (hole, pitches) => {
    expect(bendsOf(hole)).toEqual(pitches);
  });

  // US patent 6,635,814 B2: draw bends in holes 1–6, blow bends in 7–10.
  it('are drawn up to hole 6 and blown from hole 7', () => {
    for (const { hole, breath, technique } of C_HARP.sounds) {
      if (technique === 'bend') expect(breath).toBe(hole <= 6 ? 'draw' : 'blow');
      if (technique === 'overbend') expect(breath).toBe(hole <= 6 ? 'blow' : 'draw');
    }
  });
});

describe('overbends', () => {
  // That they lie above the higher reed: US patent 6,635,814 B2 ("sharped"); by a semitone: common practice, no source.
  it.each([
    ['1OB', 'Eb4'],
    ['2OB', 'Ab4'],
    ['3OB', 'C5'],
    ['4OB', 'Eb5'],
    ['5OB', 'Gb5'],
    ['6OB', 'Bb5'],
    ['7OD', 'Db6'],
    ['8OD', 'F6'],
    ['9OD', 'Ab6'],
    ['10OD', 'Db7'],
  ])('%s of a C harp is %s', (id, name) => {
    const sound = C_HARP.sounds.find((each) => soundId(each) === id);
    expect(sound && pitchName(sound.pitch, 'C')).toBe(name);
  });
});

describe('the 37 semitones from C4 to C7', () => {
  const having = (techniques: readonly string[]): ReadonlySet<number> =>
    new Set(
      C_HARP.sounds.filter(({ technique }) => techniques.includes(technique)).map(({ pitch }) => pitch),
    );
  const range = Array.from({ length: 37 }, (_, i) => 60 + i);

  // US patents 5,182,413 (1993) and 5,367,937 (1994): about 31 notes from ten cells and twenty reeds.
  it('31 need no overbend', () => {
    const without = having(['natural', 'bend']);
    expect(without.size).toBe(31);
    // By arithmetic from the layout: 19 natural and 12 bent notes leave six.
    expect(range.filter((pitch) => !without.has(pitch))).toEqual([63, 75, 78, 82, 85, 92]);
  });

  // Common practice, no source: overblows and overdraws complete a three-octave chromatic scale.
  it('all can be had with overbends', () => {
    const all = having(['natural', 'bend', 'overbend']);
    expect(range.filter((pitch) => !all.has(pitch))).toEqual([]);
  });
});
