import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bar } from '../../../src/core/chart/chart';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { formAsText } from '../../../src/core/chart-text/print-chart';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { simplifications } from '../../../src/core/chart-text/simplifications';
import { respellText, transposeText } from '../../../src/core/chart-text/transpose-text';
import { oneChordABar } from '../../../src/core/chart-text/unparted';
import { fitChart } from '../../../src/core/fit/fit';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { EVERY_TECHNIQUE } from '../../../src/core/harp/reach';
import { RICHTER } from '../../../src/core/harp/tunings';
import { ENGLISH } from '../../../src/core/theory/note-names';
import { asPitchClass } from '../../../src/core/theory/units';
import { SOAK_TIMEOUT, soakRuns } from '../../helpers/soak';

const SIGNS = [
  ...'ABCDEFGHabdgijmosuvxIV0123456789#b♯♭𝄪𝄫°ø△Δ∆+-−^()[]{}/\\|:%𝄎., \t\n',
  ...[
    'maj',
    'min',
    'dim',
    'aug',
    'sus',
    'add',
    'omit',
    'no',
    'alt',
    'm7b5',
    '7',
    '°7',
    '/B',
    '|:',
    ':|',
    'N.C.',
    '##',
    'bb',
  ],
  ...['\0', '\u2028', '\u{1F3B5}', '\ud800', '__proto__', 'constructor', 'toString', 'NaN'],
];

/** A chart's lines two by two: one changed place shows in them as it does in the whole, which takes far longer to read. */
const pairsOfLines = (text: string): readonly string[] => {
  const lines = text.split('\n');
  return lines.flatMap((line, i) => (i % 2 === 0 ? [[line, ...lines.slice(i + 1, i + 2)].join('\n')] : []));
};

const FORMS = FORM_IDS.flatMap((id) => [formAsText(id, 'Bb'), formAsText(id, 'F#', 'numerals')]);

const VALID = [
  ...new Set(FORMS.flatMap(pairsOfLines)),
  '|: C△7/E | F♯ø7 / G7(b9, 13) :|',
  'F#o7/Eb | G#o7/F | Bdim7/Ab | C°7/Bbb',
  'IV/V | V7/ii | viio7/V | I6/9 /b7',
  '(Dm7 G7) | C(b5)/Gb (C7 (b9)) /A | N.C.',
  'C7 F7 C7 C7\nF7 F7 C7 C7\nG7 F7 C7 G7',
];

const noise = fc.array(fc.constantFrom(...SIGNS), { maxLength: 24 }).map((parts) => parts.join(''));

/** A valid chart with a piece cut out, doubled, or replaced by noise. */
const mutated = fc
  .tuple(fc.constantFrom(...VALID), fc.nat(80), fc.nat(8), fc.constantFrom(...SIGNS, ''), fc.boolean())
  .map(([text, at, length, sign, doubled]) => {
    const from = at % text.length;
    const piece = text.slice(from, from + length);
    return text.slice(0, from) + sign + (doubled ? piece + piece : '') + text.slice(from + length);
  });

const texts = fc.oneof(noise, fc.string({ unit: 'binary', maxLength: 30 }), mutated);
const tonics = fc.constantFrom('C', 'F#', 'Gb', 'Cb', 'C#', 'Bb', 'A', 'E');
const options = (tonic: string) => ({ tonic, mode: 'major', meter: '4/4', title: 'Own' }) as const;

const HARP = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

const bassOf = ({ chords }: Bar): readonly number[] => chords.map(({ chord }) => chord.bass);

describe('hostile chart text', () => {
  it(
    'is read, whatever it is, into bars without a gap, and kept',
    () => {
      fc.assert(
        fc.property(texts, tonics, (text, tonic) => {
          const { source, chart, bars, problems } = readChart(text, options(tonic));
          const spans = chart.bars.flatMap((bar) => bar.chords);
          const ends = spans.every(({ at, length }, i) => at + length === (spans[i + 1]?.at ?? chart.length));
          const sounds = spans.every(({ chord }) => chord.tones.length > 1 && chord.symbol !== '');
          const explained = bars.every(({ status }) => status === 'read') || problems.length > 0;
          return source === text && ends && sounds && explained;
        }),
        { numRuns: soakRuns() },
      );
    },
    SOAK_TIMEOUT,
  );

  it(
    'goes through printing, transposing, parting, naming and the fit',
    () => {
      fc.assert(
        fc.property(texts, tonics, fc.integer({ min: -12, max: 12 }), (text, tonic, by) => {
          const reading = readChart(text, options(tonic));
          const moved = transposeText(reading, by);
          expect(readChart(moved.text, options(moved.tonic)).chart.bars).toHaveLength(
            reading.chart.bars.length,
          );
          const same = readChart(respellText(reading, reading.chart.tonic), options(tonic)).chart;
          expect(same.bars.map(bassOf)).toEqual(reading.chart.bars.map(bassOf));
          expect(oneChordABar(text, tonic).replace(/[ |,;\t]/g, '')).toBe(text.replace(/[ |,;\t]/g, ''));
          const names = reading.chart.bars.flatMap(({ chords }) =>
            chords.map(({ chord }) => `${ENGLISH.chord(chord)} ${chord.roman}`),
          );
          expect(names.join()).not.toMatch(/undefined|NaN/);
          for (const { sentence } of simplifications(reading.chart))
            expect(sentence).toMatch(/^[A-G].*: the band /);
          const fit = fitChart({ chart: reading.chart, harp: HARP, technique: EVERY_TECHNIQUE });
          expect(fit.bars).toHaveLength(reading.chart.bars.length);
        }),
        { numRuns: soakRuns(50) },
      );
    },
    SOAK_TIMEOUT,
  );
});
