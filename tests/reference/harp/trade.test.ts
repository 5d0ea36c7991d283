import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import type { Breath, Harp } from '../../../src/core/harp/harp';
import { soundId } from '../../../src/core/harp/tab';
import { RICHTER } from '../../../src/core/harp/tunings';
import { readSymbol } from '../../../src/core/theory/chords';
import { pitchClassOf, pitchName } from '../../../src/core/theory/pitch';
import { scaleOf } from '../../../src/core/theory/scales';
import { asPitchClass } from '../../../src/core/theory/units';

/** Facts of the trade. Unless a line says otherwise: common practice, no source. */

const harpIn = (key: string): Harp => buildHarp({ tuning: RICHTER, key: pitchClassOf(key), octave: 0 });
const C_HARP = harpIn('C');

const reeds = (harp: Harp, breath: Breath, from: number, to: number): readonly number[] =>
  harp.reeds
    .filter((reed) => reed.breath === breath && reed.hole >= from && reed.hole <= to)
    .map(({ pitch }) => pitch);

const classes = (pitches: readonly number[]): readonly number[] =>
  [...new Set(pitches.map((pitch) => asPitchClass(pitch)))].sort((a, b) => a - b);

const chordClasses = (symbol: string): readonly number[] =>
  [...(readSymbol(symbol)?.tones ?? [])].map(({ pitchClass }) => pitchClass).sort((a, b) => a - b);

describe('facts of the trade', () => {
  it('blow is three octaves of the tonic arpeggio', () => {
    const blow = reeds(C_HARP, 'blow', 1, 10);
    expect(classes(blow)).toEqual(chordClasses('C'));
    expect((blow[9] ?? 0) - (blow[0] ?? 0)).toBe(36);
  });

  // Also Wikipedia, "Richter-tuned harmonica".
  it('draw 1 to 4 is the dominant chord, draw 2 to 5 its seventh chord, draw 4 to 6 the minor chord on the second step', () => {
    expect(classes(reeds(C_HARP, 'draw', 1, 4))).toEqual(chordClasses('G'));
    expect(classes(reeds(C_HARP, 'draw', 2, 5))).toEqual(chordClasses('G7'));
    expect(classes(reeds(C_HARP, 'draw', 4, 6))).toEqual(chordClasses('Dm'));
    expect(classes(reeds(C_HARP, 'draw', 8, 10))).toEqual(chordClasses('Dm'));
  });

  it('from hole 7 up the draw note lies below the blow note, below hole 7 above it', () => {
    const blow = reeds(C_HARP, 'blow', 1, 10);
    const lower = reeds(C_HARP, 'draw', 1, 10).map((draw, i) => draw < (blow[i] ?? 0));
    expect(lower).toEqual([false, false, false, false, false, false, true, true, true, true]);
  });

  it('there is no major seventh among the natural notes of the top octave', () => {
    const top = C_HARP.reeds.filter(({ pitch }) => pitch >= 84).map(({ pitch }) => asPitchClass(pitch));
    expect(top).not.toContain(11);
  });

  // Also Wikipedia, "Richter-tuned harmonica": one complete major scale, in holes 4 to 7.
  it('holes 4 to 7 carry the one complete major scale', () => {
    const within = (from: number, to: number): readonly number[] =>
      classes([...reeds(C_HARP, 'blow', from, to), ...reeds(C_HARP, 'draw', from, to)]);
    expect(within(4, 7)).toEqual([0, 2, 4, 5, 7, 9, 11]);
    expect(within(1, 3)).not.toContain(5);
    expect(within(1, 3)).not.toContain(9);
  });

  it('breathing in gives the mixolydian mode: on the root of the draw chord the natural notes are mixolydian', () => {
    const natural = classes(C_HARP.reeds.map(({ pitch }) => pitch));
    const mode = scaleOf('mixolydian', 'G').tones.map(({ pitchClass }) => pitchClass);
    expect(natural).toEqual([...mode].sort((a, b) => a - b));
    expect(asPitchClass(reeds(C_HARP, 'draw', 2, 2)[0] ?? 0)).toBe(7);
  });

  it('draw 2 bends two semitones and draw 3 three', () => {
    const deepest = (hole: number): number =>
      Math.max(...C_HARP.sounds.filter((sound) => sound.hole === hole).map(({ bend }) => bend));
    expect([deepest(2), deepest(3)]).toEqual([2, 3]);
  });

  it('on a G harp hole 6 gives D, Eb and E, and the F needs an overblow', () => {
    const hole = harpIn('G').sounds.filter((sound) => sound.hole === 6);
    expect(hole.map((sound) => `${soundId(sound)} ${pitchName(sound.pitch, 'C')}`)).toEqual([
      '6B D5',
      "6D' Eb5",
      '6D E5',
      '6OB F5',
    ]);
  });
});
