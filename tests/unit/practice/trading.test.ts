import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barTicks, buildChart, layChart, METERS } from '../../../src/core/chart/build-chart';
import type { Chart, MeterName } from '../../../src/core/chart/chart';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { EVERY_TECHNIQUE, isInReach, NATURAL_NOTES } from '../../../src/core/harp/reach';
import { soundId } from '../../../src/core/harp/tab';
import { RICHTER, TUNINGS } from '../../../src/core/harp/tunings';
import { onHarp } from '../../../src/core/phrase/phrase';
import { readPhrase } from '../../../src/core/phrase/read-phrase';
import { makeCall } from '../../../src/core/practice/call';
import { EIGHTH_TICKS, RHYTHM_CELLS } from '../../../src/core/practice/rhythm-cells';
import { type TradingSpec, TURN_WORDS, tradeOver } from '../../../src/core/practice/trading';
import type { NoteEvent } from '../../../src/core/score/score';
import { readSymbol } from '../../../src/core/theory/chords';
import { asPitchClass } from '../../../src/core/theory/units';

const METER_NAMES: readonly MeterName[] = ['4/4', '3/4', '12/8', '6/8'];
const cHarp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

const anyKey = fc.integer({ min: 0, max: 11 }).map(asPitchClass);

const anyChart: fc.Arbitrary<Chart> = fc
  .record({ form: fc.constantFrom(...FORM_IDS), key: anyKey, meter: fc.constantFrom(...METER_NAMES) })
  .map(buildChart);

const anyTrading: fc.Arbitrary<TradingSpec> = fc.record({
  chart: anyChart,
  harp: fc
    .record({ tuning: fc.constantFrom(...TUNINGS), key: anyKey, octave: fc.constant(0) })
    .map(buildHarp),
  technique: fc.constantFrom(NATURAL_NOTES, EVERY_TECHNIQUE, { ...EVERY_TECHNIQUE, overbends: false }),
  taste: fc.constantFrom(...(['gentle', 'even', 'bold'] as const)),
  seed: fc.integer(),
  swing: fc.constantFrom(1, 2, 3.5),
});

const barsOf = (count: number): Chart =>
  layChart({
    title: 'Bars',
    mode: 'major',
    tonic: 'G',
    meter: METERS['4/4'],
    bars: Array.from({ length: count }, () => [readSymbol('G7')].flatMap((chord) => chord ?? [])),
  });

const SPEC: TradingSpec = {
  chart: buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' }),
  harp: cHarp,
  technique: EVERY_TECHNIQUE,
  taste: 'gentle',
  seed: 1,
  swing: 2,
};

const turnsOver = (bars: number): string =>
  tradeOver({ ...SPEC, chart: barsOf(bars) })
    .turns.map((turn) => (turn === 'listen' ? 'L' : 'a'))
    .join('');

describe('rhythm cells', () => {
  it.each(METER_NAMES)('of %s fill the bar, and closing ones end in silence', (meter) => {
    const { opening, closing } = RHYTHM_CELLS[meter];
    for (const cell of [...opening, ...closing]) {
      const eighths = cell.reduce((sum, each) => sum + Math.abs(each), 0);
      expect(eighths * EIGHTH_TICKS).toBe(barTicks(METERS[meter]));
      expect(cell.some((each) => each > 0)).toBe(true);
    }
    for (const cell of closing) expect(cell.at(-1)).toBeLessThan(0);
  });
});

describe('makeCall', () => {
  it('stays inside the chords and the reach, and leaves room before the answer', () => {
    fc.assert(
      fc.property(anyTrading, fc.integer({ min: 1, max: 4 }), (spec, count) => {
        const { chart, harp, technique } = spec;
        const bars = chart.bars.slice(0, count);
        const phrase = makeCall({ ...spec, bars, meter: chart.meter });
        expect(phrase.length).toBe(count * barTicks(chart.meter));
        const { notes, missing } = onHarp(phrase, harp);
        expect(missing).toEqual([]);
        let at = 0;
        for (const note of notes) {
          expect(note.at).toBeGreaterThanOrEqual(at);
          at = note.at + note.length;
          for (const sound of note.sounds) {
            expect(isInReach(sound, technique)).toBe(true);
            const chord = bars.flatMap((bar) => bar.chords).findLast((span) => span.at <= note.at)?.chord;
            expect(chord?.tones.map(({ pitchClass }) => pitchClass)).toContain(asPitchClass(sound.pitch));
          }
        }
        expect(at).toBeLessThan(phrase.length);
        expect(makeCall({ ...spec, bars, meter: chart.meter })).toEqual(phrase);
      }),
      { numRuns: 60 },
    );
  });

  it('says something else with other seeds', () => {
    const bars = SPEC.chart.bars.slice(0, 2);
    const calls = Array.from({ length: 20 }, (_, seed) =>
      JSON.stringify(makeCall({ ...SPEC, bars, meter: SPEC.chart.meter, seed })),
    );
    expect(new Set(calls).size).toBeGreaterThanOrEqual(18);
  });

  it('is silent where nothing in reach fits', () => {
    const off = cHarp.sounds.map(soundId);
    const technique = { ...NATURAL_NOTES, off };
    expect(
      makeCall({ ...SPEC, technique, bars: SPEC.chart.bars.slice(0, 2), meter: SPEC.chart.meter }).notes,
    ).toEqual([]);
  });
});

describe('tradeOver', () => {
  it.each([
    [1, 'a'],
    [2, 'La'],
    [3, 'Laa'],
    [4, 'LLaa'],
    [6, 'LLaaLa'],
    [12, 'LLaaLLaaLLaa'],
  ])('parts %i bars as %s', (bars, turns) => {
    expect(turnsOver(bars)).toBe(turns);
  });

  it('says whose turn it is in words', () => {
    expect(TURN_WORDS).toEqual({ listen: 'Listen', answer: 'Your turn' });
  });

  it('plays only while the player listens, in every form, meter and tuning', () => {
    fc.assert(
      fc.property(anyTrading, (spec) => {
        const { turns, calls, lead } = tradeOver(spec);
        const { chart } = spec;
        expect(turns).toHaveLength(chart.bars.length);
        expect(turns.filter((turn) => turn === 'answer').length).toBeGreaterThanOrEqual(turns.length / 2);
        const events: readonly NoteEvent[] = lead;
        for (const { at, length } of events) {
          const first = Math.floor(at / barTicks(chart.meter));
          const last = Math.floor((at + length - 1) / barTicks(chart.meter));
          expect([turns[first], turns[last]]).toEqual(['listen', 'listen']);
        }
        for (const { bar, bars, cut } of calls) {
          expect(turns.slice(bar, bar + bars).every((turn) => turn === 'listen')).toBe(true);
          expect(cut).toBe(false);
        }
        expect(tradeOver(spec)).toEqual(tradeOver(spec));
      }),
      { numRuns: 40 },
    );
  });

  it('takes typed phrases in turn, gives a long one more room and cuts what leaves none for the answer', () => {
    const { phrase: short } = readPhrase('-2:q -3 -4:h | -4:w', '4/4');
    const { phrase: three } = readPhrase('-4:w | -4 | -4', '4/4');
    const { phrase: five } = readPhrase('-4:w | -4 | -4 | -4:q r:h.  | -4:w', '4/4');
    const { turns, calls, lead } = tradeOver({ ...SPEC, phrases: [short, three, five] });
    expect(turns.map((turn) => turn.charAt(0)).join('')).toBe('llaalllallla');
    expect(calls.map(({ bar, bars, cut }) => [bar, bars, cut])).toEqual([
      [0, 2, false],
      [4, 3, false],
      [8, 3, true],
    ]);
    expect(lead.filter(({ at }) => at < 4 * 1920).map(({ at, pitch }) => [at, pitch])).toEqual([
      [0, 67],
      [480, 71],
      [960, 74],
      [1920, 74],
    ]);
  });

  it('names the sounds of a typed phrase that this harp lacks', () => {
    const { phrase } = readPhrase('12 -4', '4/4');
    expect(tradeOver({ ...SPEC, phrases: [phrase] }).calls[0]?.missing).toEqual(['12B']);
  });
});
