import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { type FitChord, fitChart } from '../../../src/core/fit/fit';
import { byRegister, isSafe, plainSounds } from '../../../src/core/fit/plain-words';
import { buildHarp } from '../../../src/core/harp/build-harp';
import type { TechniqueChoice } from '../../../src/core/harp/reach';
import { RICHTER } from '../../../src/core/harp/tunings';
import { asPitchClass } from '../../../src/core/theory/units';

const BENDS: TechniqueChoice = { drawBends: true, blowBends: false, overbends: false, off: [] };

/** The first bar of twelve in G on a C harp: G7, second position. */
const g7 = (): FitChord => {
  const chart = buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' });
  const harp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
  const chord = fitChart({ chart, harp, technique: BENDS }).bars[0]?.chords[0];
  if (chord === undefined) throw new Error('There is no first bar');
  return chord;
};

const named = (sounds: readonly { readonly id: string; readonly name: string }[]): string =>
  sounds.map(({ id, name }) => `${id} ${name}`).join(', ');

describe('plain words', () => {
  // Draw 2 and blow 3 are one note; of the natural ways both stay, of a bend to the same pitch none would.
  it('call root, third and fifth safe', () => {
    expect(named(plainSounds(g7()).safe)).toBe('1D D, 2D G, 3B G, 3D B, 4D D, 6B G, 7D B, 8D D, 9B G');
  });

  // Wikipedia, "Blue note": flattened third, fifth and seventh of the key; in G B♭, D♭ and F.
  it('say that the seventh and the blue notes of the key lean', () => {
    expect(named(plainSounds(g7()).leans)).toBe("1D' Db, 2D'' F, 3D' Bb, 4D' Db, 5D F, 9D F");
  });

  it('leave nothing twice and nothing out that is a tone of the chord', () => {
    const fit = g7();
    const { safe, leans } = plainSounds(fit);
    const all = [...safe, ...leans];
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    const pitches = new Set(all.map(({ pitch }) => pitch));
    expect(fit.sounds.filter(({ pitch }) => !pitches.has(pitch))).toEqual([]);
    const { low, middle, high } = byRegister(all);
    expect(low.length + middle.length + high.length).toBe(all.length);
  });

  it.each(['4', '6', '7', 'b7', 'bb7', '9', 'b9'] as const)('never rest on a %s', (degree) => {
    expect(isSafe(degree)).toBe(false);
  });
});
