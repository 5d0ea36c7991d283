import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnaroundBook, turnedAround } from '../../../src/core/arranger/turnarounds';
import type { Chart } from '../../../src/core/chart/chart';
import { FEEL_IDS, feelOf } from '../../../src/core/feels/feels';
import { TURNAROUND_FIGURES } from '../../../src/core/feels/turnaround-figures';
import { turnaroundLine, withTurnaround } from '../../../src/core/players/turnaround';
import { minorNinthsOf } from '../../helpers/band-figures';
import { anyPlan, anyProgram, fullBand } from '../../helpers/program-arbitraries';
import { partOf, sectionOf, sectionsOf } from '../../helpers/score-events';
import { SOAK_TIMEOUT, soakRuns } from '../../helpers/soak';
import { testChart, testProgram } from '../../helpers/test-charts';

const symbols = (chart: Chart): string =>
  chart.bars
    .slice(-2)
    .map(({ chords }) => chords.map(({ chord }) => chord.symbol).join(' '))
    .join(' | ');

// Chords after the sources named with the figures; spelled here in C by hand.
describe('a turnaround', () => {
  it.each([
    ['plain', 'C7 | C7 G7'],
    ['falling line', 'C C7 F/C Fm/C | C Ab7 G7'],
    ['parallel sixths', 'C C7 Cdim7 Fm/C | C Ab7 G7'],
    ['rising bass', 'C C7/E F F#dim7 | C/G A7 D7 G7'],
    ['contrary', 'C C7/E F Ab7/Gb | C/G G7'],
    ['halves', 'C7 F7 | C7/G G7'],
    ['passing', 'C7 C#dim7 | Dm7 G7'],
    ['tritones', 'C7 Eb7 | D7 Db7'],
    ['minor line', 'Cm CmMaj7 Cm7 Cm6 | Ab7 G7'],
    ['minor cycle', 'Cm7 Am7b5 | Dm7b5 G7b9'],
  ])('%s is %s in C', (id, expected) => {
    const figure = TURNAROUND_FIGURES.find((each) => each.id === id);
    if (figure === undefined) throw new Error(id);
    const chart = testChart(figure.mode === 'minor' ? 'minor-b' : 'standard-turnaround', 0);
    expect(symbols(withTurnaround(chart, figure))).toBe(expected);
  });

  it.each(TURNAROUND_FIGURES)(
    '$id has a chord tone in the bass on beats 1 and 3, roots where chords begin',
    (figure) => {
      const chart = withTurnaround(
        testChart(figure.mode === 'minor' ? 'minor-b' : 'standard-turnaround', 0),
        figure,
      );
      const line = turnaroundLine(chart);
      expect(line?.bar).toBe(10);
      for (const [i, beats] of (line?.beats ?? []).entries()) {
        const bar = chart.bars[10 + i];
        if (bar === undefined) throw new Error('No bar');
        for (const [beat, step] of beats.entries()) {
          const at = bar.at + beat * 480;
          const span = bar.chords.findLast((each) => each.at <= at);
          if (span?.at === at)
            expect([figure.id, i, beat, step % 12]).toEqual([figure.id, i, beat, span.chord.bass]);
          const tones = [span?.chord.bass, ...(span?.chord.tones ?? []).map(({ pitchClass }) => pitchClass)];
          if (beat % 2 === 0) expect(tones).toContain(step % 12);
        }
      }
    },
  );

  it('is found again in a chart that has it, in every key and meter', () => {
    for (const figure of TURNAROUND_FIGURES) {
      for (const meter of ['4/4', '3/4', '12/8', '6/8'] as const) {
        for (let key = 0; key < 12; key += 1) {
          const chart = testChart(figure.mode === 'minor' ? 'minor-b' : 'standard-turnaround', key, meter);
          expect(turnaroundLine(withTurnaround(chart, figure))?.beats[0]).toHaveLength(chart.meter.beats);
        }
      }
    }
  });

  it.each(FEEL_IDS)('%s has at least two for a blues in major, in minor and with jazz changes', (feel) => {
    const { usual } = feelOf(feel).tempo;
    for (const form of ['standard-turnaround', 'minor-b', 'jazz-swing'] as const) {
      expect(turnaroundBook(testChart(form), feel, usual).length).toBeGreaterThan(1);
    }
  });

  it('leaves a form that rests at home, and one as it is written', () => {
    const choice = { style: { feel: 'shuffle', seed: 3 }, tempo: 100 } as const;
    expect(turnaroundBook(testChart('standard'), 'shuffle', 100)).toEqual([]);
    const chart = testChart();
    expect(turnedAround(chart, { ...choice, turnarounds: 'as written' }, 2)).toBe(chart);
  });

  it('changes its chord with every beat only where a beat lasts half a second', () => {
    for (const feel of FEEL_IDS) {
      for (let chorus = 0; chorus < 12; chorus += 1) {
        const choice = { style: { feel, seed: 5 }, tempo: 121, turnarounds: 'varied' } as const;
        const bars = turnedAround(testChart(), choice, chorus).bars.slice(-2);
        expect(Math.max(...bars.map(({ chords }) => chords.length))).toBeLessThanOrEqual(2);
      }
    }
  });

  it('keeps to one figure most of the time, and takes another now and then', () => {
    const program = testProgram('shuffle', { plan: { turnarounds: 'varied' }, style: { seed: 4 } });
    const played = Array.from({ length: 24 }, (_, i) => symbols(sectionOf(program, i).chart));
    const counts = [...new Set(played)].map((each) => played.filter((other) => other === each).length);
    expect(Math.max(...counts)).toBeGreaterThan(11);
    expect(counts.length).toBeGreaterThan(2);
  });
});

describe('an intro from the turnaround', () => {
  it.each(FEEL_IDS)('%s plays a figure, for a form that rests at home too', (feel) => {
    const meter = feelOf(feel).meter ?? '4/4';
    for (const form of ['standard', 'standard-turnaround'] as const) {
      const plan = { intro: 'turnaround', turnarounds: 'varied' } as const;
      const intro = sectionOf(testProgram(feel, { chart: testChart(form, 7, meter), plan }), 0);
      expect(intro.kind).toBe('intro');
      expect(turnaroundLine(intro.chart)?.bar).toBe(2);
    }
  });
});

describe('band and chart', () => {
  it('strike every chord of a turnaround that changes with the beats', () => {
    let bars = 0;
    for (let chorus = 0; chorus < 16; chorus += 1) {
      const plan = { turnarounds: 'varied' } as const;
      const section = sectionOf(
        testProgram('slow-12-8', { style: { chords: 'piano', seed: 2 }, plan }),
        chorus,
      );
      const struck = new Set(partOf(section, 'chords').map(({ at }) => at));
      for (const { chords } of section.chart.bars.slice(-2).filter((bar) => bar.chords.length > 2)) {
        bars += 1;
        expect(chords.filter(({ at }) => !struck.has(at))).toEqual([]);
      }
    }
    expect(bars).toBeGreaterThan(4);
  });

  it(
    'have no minor ninth between a chord and the bass for a triplet eighth or longer',
    () => {
      fc.assert(
        fc.property(anyProgram(anyPlan), (program) => {
          for (const section of sectionsOf(program, 4)) expect(minorNinthsOf(section)).toEqual([]);
        }),
        { numRuns: soakRuns(2500) },
      );
    },
    SOAK_TIMEOUT,
  );

  it(
    'have the bass of every turnaround chord where it begins, whatever form, key and feel',
    () => {
      fc.assert(
        fc.property(anyProgram(fullBand), fc.nat(8), (program, chorus) => {
          const section = sectionOf({ ...program, plan: { ...program.plan, turnarounds: 'varied' } }, chorus);
          const bass = partOf(section, 'bass');
          for (const { at, chord } of section.chart.bars.slice(-2).flatMap(({ chords }) => chords)) {
            if (turnaroundLine(section.chart) === null) continue;
            const note = bass.findLast((each) => each.at <= at && each.at + each.length > at);
            expect([chord.symbol, (note?.pitch ?? -1) % 12]).toEqual([chord.symbol, chord.bass]);
          }
        }),
        { numRuns: soakRuns(2500) },
      );
    },
    SOAK_TIMEOUT,
  );

  it(
    'never have a major third in the bass under a minor chord',
    () => {
      fc.assert(
        fc.property(anyProgram(fullBand), fc.nat(8), (program, chorus) => {
          const section = sectionOf(program, chorus);
          const spans = section.chart.bars.flatMap(({ chords }) => chords);
          const wrong = partOf(section, 'bass').filter(({ at, pitch }) => {
            const chord = spans.findLast((span) => span.at <= at + 1)?.chord;
            const steps = (chord?.tones ?? []).map(
              ({ pitchClass }) => (pitchClass - (chord?.root ?? 0) + 12) % 12,
            );
            const minor = steps.includes(3) && !steps.includes(4);
            return minor && (pitch - (chord?.root ?? 0) + 120) % 12 === 4;
          });
          expect(wrong).toEqual([]);
        }),
        { numRuns: soakRuns(2500) },
      );
    },
    SOAK_TIMEOUT,
  );
});
