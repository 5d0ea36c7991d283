import { describe, expect, it } from 'vitest';
import { buildChart } from '../../src/core/chart/build-chart';
import { buildHarp } from '../../src/core/harp/build-harp';
import { EVERY_TECHNIQUE } from '../../src/core/harp/reach';
import { soundId } from '../../src/core/harp/tab';
import { RICHTER } from '../../src/core/harp/tunings';
import { lineTab } from '../../src/core/lines/line-tab';
import { findLine } from '../../src/core/lines/lines';
import { asPitchClass } from '../../src/core/theory/units';

const cHarp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
const standardInG = buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' });

const changes = <T>(items: readonly T[]): readonly T[] => items.filter((item, i) => item !== items[i - 1]);

describe('guide-tone line over a standard blues in G on a C harp', () => {
  /**
   * By arithmetic from the chord tones (3rds and 7ths of G7, C7 and D7 lie a semitone apart) and the layout of OEIS
   * A291810: F falls to E, E rises through F to F sharp, and home again. On the harp: draw 5, blow 5, draw 5,
   * overblow 5, blow 5, draw 5.
   */
  it('is the line of sevenths that moves by semitones where every technique is at hand', () => {
    const line = findLine({
      chart: standardInG,
      harp: cHarp,
      technique: EVERY_TECHNIQUE,
      kind: 'guide tones',
      taste: 'bold',
      seed: 0,
    });
    expect(changes(lineTab(line, standardInG, 'letters'))).toEqual(['5D', '5B', '5D', '5OB', '5B', '5D']);
    expect(changes(line.notes.map(({ name }) => name))).toEqual(['F', 'E', 'F', 'F#', 'E', 'F']);
    expect(changes(line.notes.map(({ degree }) => degree))).toEqual(['b7', '3', 'b7', '3', 'b7']);
  });

  /**
   * By the same arithmetic the thirds of the lower octave: B, B flat, B, C, B flat, B; draw 3, its bend of a semitone,
   * draw 3, blow 4, the bend, draw 3.
   */
  it('is the line of thirds where only holes 1 to 4 are used', () => {
    const off = cHarp.sounds.filter(({ hole }) => hole > 4).map(soundId);
    const line = findLine({
      chart: standardInG,
      harp: cHarp,
      technique: { ...EVERY_TECHNIQUE, off },
      kind: 'guide tones',
      taste: 'bold',
      seed: 0,
    });
    expect(changes(lineTab(line, standardInG, 'letters'))).toEqual(['3D', "3D'", '3D', '4B', "3D'", '3D']);
    expect(changes(line.notes.map(({ name }) => name))).toEqual(['B', 'Bb', 'B', 'C', 'Bb', 'B']);
  });
});
