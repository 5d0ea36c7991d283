import { describe, expect, it } from 'vitest';
import { buildChart, layChart, METERS } from '../../../src/core/chart/build-chart';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { simplifications } from '../../../src/core/chart-text/simplifications';
import { COMPING_REGISTER, type Colour, voicingsOf } from '../../../src/core/players/voicing';
import type { Chord } from '../../../src/core/theory/chord';
import { chordOf } from '../../../src/core/theory/chords';
import { asPitchClass } from '../../../src/core/theory/units';
import { DICTIONARY } from '../../helpers/chord-dictionary';

const of = (text: string) =>
  simplifications(readChart(text, { tonic: 'C', mode: 'major', meter: '4/4', title: 'Own' }).chart);

describe('simplifications', () => {
  it.each([
    ['C13#11', 'C13♯11: the band plays the 3 and ♭7 with at most two of 9, ♯11 and 13 at a time.'],
    ['Cm(add9)', 'Cmadd9: the band leaves out the 9.'],
    ['C5', 'C5: the band may add the 3.'],
  ])('%s: %s', (symbol, sentence) => {
    expect(of(symbol).map((each) => each.sentence)).toEqual([sentence]);
  });

  it('lists each chord once with its bars', () => {
    expect(of('Cm(add9) | F7 | Cm(add9) G13#11').map(({ symbol, bars }) => [symbol, bars])).toEqual([
      ['Cmadd9', [0, 2]],
      ['G13#11', [2]],
    ]);
  });

  it.each(['C7 | F9 | G13 | Am7', 'Cdim7 | Dm7b5 | Cmaj7 | C6', 'Csus4 | G7sus4 | C7#9 | Caug'])(
    '%s is played as written',
    (text) => {
      expect(of(text)).toEqual([]);
    },
  );

  it('finds nothing to simplify in the built-in forms', () => {
    for (const form of FORM_IDS) {
      expect(simplifications(buildChart({ form, key: asPitchClass(5), meter: '4/4' }))).toEqual([]);
    }
  });

  it('tells the truth about the band, for every chord of the dictionary', () => {
    const colours: readonly Colour[] = ['shell', 'plain', 'rich'];
    const chartOf = (chord: Chord) =>
      layChart({ title: 'One', mode: 'major', tonic: 'C', meter: METERS['4/4'], bars: [[chord]] });
    for (const quality of DICTIONARY) {
      const chord = chordOf({ root: 'C', quality });
      const played = new Set(
        colours.flatMap((colour) =>
          voicingsOf(chord, colour, COMPING_REGISTER)
            .flat()
            .map((pitch) => pitch % 12),
        ),
      );
      played.add(chord.bass);
      const silent = chord.tones.filter(({ pitchClass }) => !played.has(pitchClass));
      const [found] = simplifications(chartOf(chord));
      const unsaid = silent
        .filter(({ degree }) => !found?.leftOut.includes(degree))
        .map(({ degree }) => degree);
      // The chord part skips a fifth that stands beside further tones; no ear misses it, so nothing is said.
      expect([chord.symbol, unsaid.filter((degree) => degree !== '5')]).toEqual([chord.symbol, []]);
      for (const degree of found?.leftOut ?? []) {
        expect(silent.map((tone) => tone.degree)).toContain(degree);
      }
    }
  });
});
