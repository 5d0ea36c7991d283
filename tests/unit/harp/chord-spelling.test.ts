import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { fitChart } from '../../../src/core/fit/fit';
import { gripsFor } from '../../../src/core/fit/grips';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { EVERY_TECHNIQUE } from '../../../src/core/harp/reach';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { findLine } from '../../../src/core/lines/lines';
import type { Chord } from '../../../src/core/theory/chord';
import { chordOf } from '../../../src/core/theory/chords';
import { PITCH_CLASSES, pitchClassOf } from '../../../src/core/theory/pitch';
import { asPitchClass } from '../../../src/core/theory/units';
import { DICTIONARY } from '../../helpers/chord-dictionary';
import { soakRuns } from '../../helpers/soak';

const TONICS = ['C', 'Db', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'G#', 'A', 'Bb', 'B'];
const ROOTS = [...TONICS, 'Gb', 'Cb', 'D#', 'A#', 'E#', 'B#', 'Fb'];

const namesIn = (text: string): readonly string[] =>
  text.split(/[ –,]/).filter((word) => /^[A-G](?:##|bb|#|b)?$/.test(word));

/** Names that a chord spells otherwise, of those a text gives. */
const misspelled = (text: string, chord: Chord): readonly string[] =>
  namesIn(text).filter((name) => {
    const tone = chord.tones.find(({ pitchClass }) => pitchClass === pitchClassOf(name));
    return tone !== undefined && tone.name !== name;
  });

describe('chord tones are called what the chord calls them', () => {
  it('in the names of grips: every chord type, on every root in a soak, in every key, on every tuning', () => {
    const wrong = new Set<string>();
    const every = Math.max(1, Math.round((DICTIONARY.length * ROOTS.length) / soakRuns(30)));
    let [tried, read] = [0, 0];
    DICTIONARY.forEach((quality, i) => {
      ROOTS.forEach((root, j) => {
        if ((i + j) % every > 0) return;
        const chord = chordOf({ root, quality });
        const tuning = TUNINGS[tried % TUNINGS.length] ?? TUNINGS[0];
        const harp = buildHarp({ tuning, key: asPitchClass(i + 5 * j), octave: 0 });
        const tonic = TONICS[(tried + Math.floor(tried / TONICS.length)) % TONICS.length] ?? 'C';
        const { fitting, near } = gripsFor({ chord, harp, tonic });
        tried += 1;
        for (const { name, symbol, foreign } of [...fitting, ...near]) {
          const root = /^[A-G](?:##|bb|#|b)?/.exec(symbol ?? '')?.[0] ?? '';
          const text = [name, root, ...foreign.map((each) => each.name)].join(' ');
          read += namesIn(text).length;
          for (const each of misspelled(text, chord)) wrong.add(`${each} over ${chord.symbol}: ${text}`);
        }
      });
    });
    expect([...wrong]).toEqual([]);
    expect(read).toBeGreaterThan(10_000 / every);
  });

  it('in fit, gaps and lines: every form in every key', () => {
    const harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 });
    const technique = { ...EVERY_TECHNIQUE, overbends: false };
    for (const form of FORM_IDS) {
      for (const key of PITCH_CLASSES) {
        const chart = buildChart({ form, key, meter: '4/4' });
        for (const { chord, sounds, beyond, gaps } of fitChart({ chart, harp, technique }).bars.flatMap(
          ({ chords }) => chords,
        )) {
          const own = new Map(chord.tones.map((tone) => [tone.degree, tone.name]));
          for (const each of [...sounds, ...beyond, ...gaps]) expect(each.name).toBe(own.get(each.degree));
        }
        for (const { chord, degree, name } of findLine({
          chart,
          harp,
          technique,
          kind: 'guide tones',
          taste: 'even',
          seed: 0,
        }).notes) {
          expect(chord.tones).toContainEqual(expect.objectContaining({ degree, name }));
        }
      }
    }
  });
});
