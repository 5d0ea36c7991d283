import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { harpKeyFor, POSITIONS, songKey } from '../../../src/core/harp/positions';
import { RICHTER } from '../../../src/core/harp/tunings';
import { keyName, pitchClassOf } from '../../../src/core/theory/pitch';
import { SCALE_IDS, scaleOf } from '../../../src/core/theory/scales';
import { asPitchClass } from '../../../src/core/theory/units';

const C = pitchClassOf('C');

describe('positions on a C harp', () => {
  // The circle of fifths: harp-l archive, July 1994, msg00019 (which prints its 9th position, Ab, as a second 8th);
  // Wikibooks, "Harmonica/Positions". Names: the same. Modes 1–6 and 12: harp-l archive, March 2012, msg00904.
  it.each([
    [1, 'C', 'straight', 'ionian'],
    [2, 'G', 'cross', 'mixolydian'],
    [3, 'D', 'slant', 'dorian'],
    [4, 'A', '', 'aeolian'],
    [5, 'E', '', 'phrygian'],
    [6, 'B', '', 'locrian'],
    [7, 'F#', '', null],
    [8, 'Db', '', null],
    [9, 'Ab', '', null],
    [10, 'Eb', '', null],
    [11, 'Bb', '', null],
    [12, 'F', '', 'lydian'],
  ])('%i: song in %s, "%s", %s', (number, key, name, mode) => {
    expect(keyName(songKey(C, number), 'major')).toBe(key);
    expect(POSITIONS[number - 1]).toMatchObject({ number, name, mode });
  });

  it('are each a fifth above the one before', () => {
    expect(POSITIONS.map(({ offset }) => offset)).toEqual([0, 7, 2, 9, 4, 11, 6, 1, 8, 3, 10, 5]);
  });

  // Wikibooks, "Harmonica/Positions": seven positions on natural notes, three of them major-based, four minor-based.
  it('seven have a natural tonic, and their modes are what the reeds give', () => {
    const natural = new Set(
      buildHarp({ tuning: RICHTER, key: C, octave: 0 }).reeds.map(({ pitch }) => asPitchClass(pitch)),
    );
    for (const { number, mode } of POSITIONS) {
      const tonic = songKey(C, number);
      const fitting = SCALE_IDS.filter((id) => {
        const { tones } = scaleOf(id, keyName(tonic, 'major'));
        return tones.length === 7 && tones.every(({ pitchClass }) => natural.has(pitchClass));
      });
      expect(fitting).toEqual(mode === null ? [] : [mode]);
    }
    expect(POSITIONS.filter(({ mode }) => mode !== null)).toHaveLength(7);
  });
});

describe('choosing a harp', () => {
  // Song key = harp key + 7 · (position − 1), from the definition above.
  it.each([
    ['A', 2, 'D'],
    ['E', 2, 'A'],
    ['G', 1, 'G'],
    ['D', 3, 'C'],
    ['F', 12, 'C'],
  ])('a song in %s in position %i needs a harp in %s', (song, position, harp) => {
    expect(keyName(harpKeyFor(pitchClassOf(song), position), 'major')).toBe(harp);
  });
});
