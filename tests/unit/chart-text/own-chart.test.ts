import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { METER_NAMES } from '../../../src/core/chart/chart';
import { TONICS } from '../../../src/core/chart/tonics';
import {
  type OwnChart,
  ownChartInKey,
  parseOwnChart,
  readOwnChart,
} from '../../../src/core/chart-text/own-chart';
import { otherSpelling, tonicIn } from '../../../src/core/chart-text/written-key';
import { pitchClassOf } from '../../../src/core/theory/pitch';
import { asPitchClass } from '../../../src/core/theory/units';

const chart = (change: Partial<OwnChart> = {}): OwnChart => ({
  id: 'chart-7',
  name: 'Thursday',
  text: '| Gb7 | Cb7 | Gb7 | Db7/F |',
  tonic: 'Gb',
  mode: 'major',
  meter: '4/4',
  ...change,
});

const symbols = (own: OwnChart, key: number, feelMeter: '4/4' | '12/8' = '4/4'): string =>
  ownChartInKey(own, asPitchClass(key), feelMeter)
    .bars.flatMap(({ chords }) => chords.map(({ chord }) => chord.symbol))
    .join(' ');

describe('an own chart in the song’s key', () => {
  it('stays as written where the song is in the key it is written in', () => {
    expect(symbols(chart(), 6)).toBe('Gb7 Cb7 Gb7 Db7/F');
  });

  it.each([
    ['E', 4, 'E7 A7 E7 B7/D#'],
    ['F', 5, 'F7 Bb7 F7 C7/E'],
    ['B flat', 10, 'Bb7 Eb7 Bb7 F7/A'],
  ])('moves to %s, spelled as usual there', (_, key, expected) => {
    expect(symbols(chart(), key)).toBe(expected);
  });

  it('writes a chord plainly in another key that was typed roundabout in its own', () => {
    const typed = chart({ text: 'Gb7 | B7 | E7/G# | Eb7' });
    expect(symbols(typed, 6)).toBe('Gb7 B7 E7/G# Eb7');
    expect(symbols(typed, 7)).toBe('G7 C7 F7/A E7');
  });

  it('keeps minor charts minor', () => {
    const minor = chart({ text: 'Am7 | Dm7 | F7 | E7', tonic: 'A', mode: 'minor' });
    expect(symbols(minor, 1)).toBe('C#m7 F#m7 A7 G#7');
    expect(ownChartInKey(minor, asPitchClass(1), '4/4')).toMatchObject({ mode: 'minor', tonic: 'C#' });
  });

  it.each([
    ['4/4', '4/4', '4/4'],
    ['4/4', '12/8', '12/8'],
    ['3/4', '12/8', '3/4'],
    ['6/8', '4/4', '6/8'],
    ['12/8', '4/4', '12/8'],
  ] as const)('written in %s under a feel in %s is played in %s', (own, feel, played) => {
    expect(ownChartInKey(chart({ meter: own }), asPitchClass(0), feel).meter.name).toBe(played);
  });

  it('carries its name as title', () => {
    expect(ownChartInKey(chart(), asPitchClass(0), '4/4').title).toBe('Thursday');
  });

  it('is one bar of the tonic while nothing is written', () => {
    expect(symbols(chart({ text: '' }), 9)).toBe('A7');
  });
});

describe('keys a chart may be written in', () => {
  it('are those of the fifteen key signatures, in both modes', () => {
    for (const mode of ['major', 'minor'] as const) {
      expect(new Set(TONICS[mode]).size).toBe(15);
      expect(new Set(TONICS[mode].map(pitchClassOf)).size).toBe(12);
    }
  });

  it.each([
    ['F#', 'major', 'Gb'],
    ['Gb', 'major', 'F#'],
    ['Cb', 'major', 'B'],
    ['G#', 'minor', 'Ab'],
    ['Eb', 'minor', 'D#'],
    ['Eb', 'major', null],
    ['C#', 'minor', null],
  ] as const)('%s %s is also spelled %s', (tonic, mode, other) => {
    expect(otherSpelling(tonic, mode)).toBe(other);
  });

  it('are respelled where the other mode does not have them', () => {
    expect([tonicIn('Db', 'minor'), tonicIn('Ab', 'minor'), tonicIn('D#', 'major')]).toEqual([
      'C#',
      'Ab',
      'Eb',
    ]);
  });
});

describe('reading a kept chart', () => {
  it('gives a sound one back as it was', () => {
    expect(parseOwnChart(JSON.parse(JSON.stringify(chart())))).toEqual({ chart: chart(), problems: [] });
  });

  it.each([
    ['no name', { name: '  ' }, 'name', 'Chart without a name', /had no name/],
    ['a key that is none', { tonic: 'H' }, 'tonic', 'C', /taken to be in C/],
    ['a mode that is none', { mode: 'dorian' }, 'mode', 'major', /taken to be major/],
    ['a meter that is none', { meter: '5/4' }, 'meter', '4/4', /taken to be in 4\/4/],
  ] as const)('repairs %s and says so', (_, broken, field, value, words) => {
    const { chart: read, problems } = parseOwnChart({ ...chart({ tonic: 'G' }), ...broken });
    expect(read?.[field]).toBe(value);
    expect(read?.text).toBe(chart().text);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(words);
  });

  it.each([null, 17, 'C7', [], {}, { text: 5 }])('leaves out %j, which holds no text', (value) => {
    const { chart: read, problems } = parseOwnChart(value);
    expect(read).toBeNull();
    expect(problems.join()).toMatch(/holds no text/);
  });

  it('does not let a chart stand in for a built-in form', () => {
    expect(parseOwnChart(chart({ id: 'standard' })).chart?.id).toBe('chart standard');
  });

  it('never throws, and keeps every text whole', () => {
    const anything = fc.record(
      {
        id: fc.anything(),
        name: fc.anything(),
        text: fc.oneof(fc.string(), fc.anything()),
        tonic: fc.oneof(fc.constantFrom('C', 'F#', 'Bbb', 'H'), fc.anything()),
        mode: fc.oneof(fc.constantFrom('major', 'minor'), fc.anything()),
        meter: fc.oneof(fc.constantFrom(...METER_NAMES), fc.anything()),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(fc.oneof(anything, fc.anything()), (value) => {
        const { chart: read, problems } = parseOwnChart(value);
        const text = (value as { text?: unknown } | null | undefined)?.text;
        if (read === null) expect(problems).toHaveLength(1);
        else {
          expect(read.text).toBe(text);
          expect(readOwnChart(read).chart.bars.length).toBeGreaterThan(0);
          expect(parseOwnChart(read)).toEqual({ chart: read, problems: [] });
        }
      }),
      { numRuns: 500 },
    );
  });
});
