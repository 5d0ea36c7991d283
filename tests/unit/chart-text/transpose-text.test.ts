import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { respell, transpose } from '../../../src/core/chart/build-chart';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { formAsText } from '../../../src/core/chart-text/print-chart';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { respellText, transposeText } from '../../../src/core/chart-text/transpose-text';
import { pitchClassOf } from '../../../src/core/theory/pitch';
import { pitchesOf } from '../../helpers/test-charts';

const OPTIONS = { tonic: 'C', mode: 'major', meter: '4/4', title: 'Own' } as const;

describe('transposeText', () => {
  it.each([
    [2, '|: C7/E | F♯ø7 / Hx :|\n  verse, G7(b9, 13)', '|: D7/F# | G♯ø7 / Hx :|\n  verse, A7(b9, 13)'],
    [1, 'C7 | F7 /Eb | bVI7 V7 | %', 'Db7 | Gb7 /Fb | bVI7 V7 | %'],
    [-2, 'C△7 | A♭7// | N.C.', 'Bb△7 | G♭7// | N.C.'],
    [6, 'C7/C | F7', 'F#7/F# | B7'],
    [2, 'C7 | (F7) | G7', 'D7 | (G7) | A7'],
    [2, '(Dm7 G7) | ((C7/E) (/B))', '(Em7 A7) | ((D7/F#) (/C#))'],
    [-2, 'F(b5)/A | C7 (♭9) | G7(b9)/(B)', 'Eb(b5)/G | B♭7 (♭9) | F7(b9)/(A)'],
    [5, 'F/B | C/F#', 'Bb/E | F/B'],
    [1, 'F/B', 'Gb/C'],
    [6, 'F/B', 'B/F'],
    [2, 'F𝄪7 | B𝄫7/A♭', 'A7 | B7/A♯'],
    [1, 'Bb#11 | Gb♯11/Bb', 'Cb#11 | G(♯11)/B'],
    [2, 'Gb#11 | Eb7', 'Ab#11 | F7'],
    [-1, 'Db#11', 'C(#11)'],
    [1, 'B/Bb7 | C7/Eb9', 'C/B7 | Db7/Fb9'],
    [-1, 'C/Db#1', 'B/C(#1)'],
    [0, 'F##b9 | B#b5', 'G(b9) | C(b5)'],
    // They were left as they were, and so became other chords of the new key.
    [2, 'a d7 | ii V7', 'Bm Em7 | ii V7'],
  ])('by %i: %j becomes %j', (semitones, text, expected) => {
    expect(transposeText(readChart(text, OPTIONS), semitones).text).toBe(expected);
  });

  it('gives the tonic it arrives at, and another spelling when asked', () => {
    const reading = readChart('C7 | F7', OPTIONS);
    expect(transposeText(reading, 6)).toEqual({ text: 'F#7 | B7', tonic: 'F#' });
    expect(respellText(reading, 'Gb')).toBe('Gb7 | Cb7');
  });

  it('keeps an alteration apart from the sign its root is given', () => {
    const rests = ['b5', 'b9', '#11', '♯11', 'b9#11', '#11/G#', 'b1b7', '1b7', '#1', 'm'];
    for (const root of ['C', 'B', 'F#', 'Gb', 'Cb', 'E#', 'Bbb', 'F##']) {
      const reading = readChart(rests.map((rest) => root + rest).join(' | '), OPTIONS);
      for (const tonic of ['Cb', 'Db', 'E', 'F#', 'Gb', 'B', 'C#'] as const) {
        const moved = readChart(respellText(reading, tonic), { ...OPTIONS, tonic });
        expect(pitchesOf(moved.chart)).toEqual(
          pitchesOf(respell(transpose(reading.chart, pitchClassOf(tonic)), tonic)),
        );
      }
    }
  });

  // Found by chance: `b1b7` behind the flat of Cb took that flat for its own.
  it('moves a symbol of which only the root is known', () => {
    const reading = readChart('B1b7', { ...OPTIONS, tonic: 'Cb' });
    expect(respellText(reading, 'Cb')).toBe('Cb1b7');
    expect(pitchesOf(readChart('Cb1b7', { ...OPTIONS, tonic: 'Cb' }).chart)).toEqual(
      pitchesOf(reading.chart),
    );
  });

  it('reads as the transposed chart, in every key', () => {
    const forms = fc.constantFrom(...FORM_IDS).map((id) => formAsText(id, 'C'));
    const typed = fc.constantFrom(
      'C7/E | F7 /A G7 /',
      'Imaj | VI7alt',
      'Db7 | Gb△7 | Bdim7',
      'C7 | what | %',
    );
    fc.assert(
      fc.property(fc.oneof(forms, typed), fc.integer({ min: -12, max: 12 }), (text, semitones) => {
        const reading = readChart(text, OPTIONS);
        const moved = transposeText(reading, semitones);
        const again = readChart(moved.text, { ...OPTIONS, tonic: moved.tonic });
        expect(pitchesOf(again.chart)).toEqual(pitchesOf(transpose(reading.chart, semitones)));
        expect(again.chart.tonic).toBe(transpose(reading.chart, semitones).tonic);
        expect(pitchesOf(readChart(respellText(again, 'C'), OPTIONS).chart)).toEqual(
          pitchesOf(reading.chart),
        );
        expect(pitchesOf(respell(again.chart, 'C'))).toEqual(pitchesOf(reading.chart));
      }),
    );
  });
});
