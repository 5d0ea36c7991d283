import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { layChart, METERS } from '../../../src/core/chart/build-chart';
import type { Chart } from '../../../src/core/chart/chart';
import { FEEL_IDS } from '../../../src/core/feels/feels';
import { BASS_HIGH, BASS_LOW } from '../../../src/core/players/bass-register';
import type { Chord } from '../../../src/core/theory/chord';
import { readSymbol } from '../../../src/core/theory/chords';
import { partOf, sectionOf } from '../../helpers/score-events';
import { soakRuns } from '../../helpers/soak';
import { testProgram } from '../../helpers/test-charts';

const SYMBOLS = [
  ...['C', 'Am', 'F6', 'Dm6', 'G7', 'Bb9', 'Eb13', 'D7b9', 'A7#9', 'E7#5', 'B7b5', 'G7sus4', 'Csus2', 'F5'],
  ...[
    'Cmaj7',
    'Fmaj9',
    'Dm7b5',
    'C#dim7',
    'Bdim',
    'Gaug',
    'C7/E',
    'F/C',
    'G7/F',
    'Am/G',
    'D7#11',
    'Abm9',
    'C7b13',
  ],
] as const;

const chord = (symbol: string): Chord => {
  const read = readSymbol(symbol);
  if (read === null) throw new Error(`Not a chord: ${symbol}`);
  return read;
};

const anyChart: fc.Arbitrary<Chart> = fc
  .record({
    meter: fc.constantFrom('4/4', '3/4', '6/8', '12/8' as const),
    bars: fc.array(fc.array(fc.constantFrom(...SYMBOLS), { minLength: 1, maxLength: 6 }), {
      minLength: 1,
      maxLength: 10,
    }),
  })
  .map(({ meter, bars }) =>
    layChart({
      title: 'Chart of the day',
      mode: 'major',
      tonic: 'C',
      meter: METERS[meter],
      bars: bars.map((symbols) => symbols.map(chord)),
    }),
  );

describe('a chart with any chords, one to six a bar, in any meter', () => {
  const anySection = fc.record({ chart: anyChart, feel: fc.constantFrom(...FEEL_IDS), seed: fc.nat(9999) });

  it('is played inside its bounds, with the asked bass note under every chord', () => {
    fc.assert(
      fc.property(anySection, ({ chart, feel, seed }) => {
        const section = sectionOf(testProgram(feel, { chart, style: { seed } }), 0);
        const bass = partOf(section, 'bass');
        expect(bass.every(({ pitch }) => pitch >= BASS_LOW && pitch <= BASS_HIGH)).toBe(true);
        const spans = chart.bars.flatMap((bar) => bar.chords);
        for (const [i, span] of spans.entries()) {
          if (span.chord.symbol === spans[i - 1]?.chord.symbol) continue;
          const struck = bass.find((note) => note.at === span.at);
          expect([span.chord.symbol, (struck?.pitch ?? -1) % 12]).toEqual([
            span.chord.symbol,
            span.chord.bass,
          ]);
        }
        const late = section.score.events.filter((e) => e.at + e.length > section.score.length);
        expect(late).toEqual([]);
      }),
      { numRuns: soakRuns(300) },
    );
  });

  it('survives every kind of ending and intro', () => {
    fc.assert(
      fc.property(
        anySection,
        fc.constantFrom('cadence', 'held', 'stop' as const),
        fc.constantFrom('turnaround', 'pickup', 'drums' as const),
        ({ chart, feel, seed }, ending, intro) => {
          const program = testProgram(feel, {
            chart,
            style: { seed },
            plan: { choruses: 1, ending, intro, ritard: true },
          });
          const sections = [0, 1, 2].map((index) => sectionAt(program, index));
          expect(sections.map((section) => section?.kind ?? null)).toEqual([
            'intro',
            'chorus',
            ending === 'stop' ? null : 'ending',
          ]);
          expect(sections[1]?.chart.length).toBe(chart.length);
        },
      ),
      { numRuns: 60 },
    );
  });
});
