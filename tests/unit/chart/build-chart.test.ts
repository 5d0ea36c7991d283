import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  barTicks,
  buildChart,
  layChart,
  METERS,
  respell,
  splitBar,
  transpose,
} from '../../../src/core/chart/build-chart';
import type { Chart, MeterName } from '../../../src/core/chart/chart';
import { FORM_IDS, FORMS } from '../../../src/core/chart/forms';
import { readSymbol } from '../../../src/core/theory/chords';
import { PITCH_CLASSES } from '../../../src/core/theory/pitch';
import { asPitchClass } from '../../../src/core/theory/units';

const METER_NAMES: readonly MeterName[] = ['4/4', '3/4', '12/8', '6/8'];

const anyChart = fc
  .record({
    form: fc.constantFrom(...FORM_IDS),
    key: fc.constantFrom(...PITCH_CLASSES),
    meter: fc.constantFrom(...METER_NAMES),
  })
  .map((spec) => ({ spec, chart: buildChart(spec) }));

const symbols = (chart: Chart): string =>
  chart.bars.map((bar) => bar.chords.map(({ chord }) => chord.symbol).join(' ')).join(' | ');

describe('buildChart', () => {
  it.each([
    ['standard', 7, 'G7 | G7 | G7 | G7 | C7 | C7 | G7 | G7 | D7 | C7 | G7 | G7'],
    ['minor-b', 1, 'C#m7 | C#m7 | C#m7 | C#m7 | F#m7 | F#m7 | C#m7 | C#m7 | A7 | G#7 | C#m7 | G#7'],
    ['jazz-bebop', 5, 'F7 | Bb7 | F7 | Cm7 F7 | Bb7 | Bdim7 | F7 | D7b9 | Gm7 | C7 | Am7 D7 | Gm7 C7'],
  ] as const)('%s in key %i', (form, key, row) => {
    expect(symbols(buildChart({ form, key: asPitchClass(key), meter: '4/4' }))).toBe(row);
  });

  it('spells the key another way when asked, and refuses another key', () => {
    const spec = { form: 'standard', key: asPitchClass(6), meter: '4/4' } as const;
    expect(buildChart(spec).tonic).toBe('F#');
    expect(symbols(buildChart({ ...spec, tonic: 'Gb' }))).toContain('Cb7');
    expect(() => buildChart({ ...spec, tonic: 'G' })).toThrow('G is not a spelling of key 6');
  });

  it('is full and contiguous in every form, key and meter', () => {
    fc.assert(
      fc.property(anyChart, ({ spec, chart }) => {
        let at = 0;
        for (const bar of chart.bars) {
          expect(bar.at).toBe(at);
          expect(bar.length).toBe(barTicks(METERS[spec.meter]));
          for (const span of bar.chords) {
            expect(span.at).toBe(at);
            expect(span.length).toBeGreaterThan(0);
            expect((span.at - bar.at) % chart.meter.beatTicks).toBe(0);
            at += span.length;
          }
        }
        expect(at).toBe(chart.length);
        expect(chart).toMatchObject({ key: spec.key, mode: FORMS[spec.form].mode });
        expect(JSON.parse(JSON.stringify(chart))).toEqual(chart);
      }),
    );
  });
});

describe('transpose', () => {
  it('gives the form in the other key, and returns after twelve fifths', () => {
    fc.assert(
      fc.property(anyChart, fc.integer({ min: -24, max: 24 }), ({ spec, chart }, semitones) => {
        const key = asPitchClass(spec.key + semitones);
        expect(transpose(chart, semitones)).toEqual(buildChart({ ...spec, key }));
        const round = Array.from({ length: 12 }).reduce<Chart>((each) => transpose(each, 7), chart);
        expect(round).toEqual(chart);
      }),
      { numRuns: 50 },
    );
  });

  it('moves chords that carry no numeral, with their bass', () => {
    const bars = [['C7/E', 'F#dim7'], ['G7sus4']].map((bar) => bar.flatMap((each) => readSymbol(each) ?? []));
    const chart = layChart({ title: 'Own', mode: 'major', tonic: 'C', meter: METERS['4/4'], bars });
    expect(symbols(transpose(chart, 3))).toBe('Eb7/G Adim7 | Bb7sus4');
    expect(symbols(respell(transpose(chart, 6), 'Gb'))).toBe('Gb7/Bb Cdim7 | Db7sus4');
  });
});

describe('splitBar', () => {
  it.each([
    ['4/4', 1, [1920]],
    ['4/4', 2, [960, 960]],
    ['4/4', 3, [960, 480, 480]],
    ['4/4', 5, [384, 384, 384, 384, 384]],
    ['3/4', 2, [960, 480]],
    ['6/8', 2, [720, 720]],
    ['12/8', 4, [720, 720, 720, 720]],
  ] as const)('in %s, %i chords take %j ticks', (meter, count, lengths) => {
    expect(splitBar(METERS[meter], count)).toEqual(lengths);
  });

  it('needs a chord', () => {
    expect(() => splitBar(METERS['4/4'], 0)).toThrow('1 chord or more, got 0');
  });
});
