import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barTicks, buildChart, layChart, METERS } from '../../../src/core/chart/build-chart';
import type { MeterName } from '../../../src/core/chart/chart';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { EVERY_TECHNIQUE, NATURAL_NOTES } from '../../../src/core/harp/reach';
import { soundId, TAB_STYLES } from '../../../src/core/harp/tab';
import { RICHTER, TUNINGS } from '../../../src/core/harp/tunings';
import { warmUp } from '../../../src/core/practice/warm-up';
import type { WarmUpSpec } from '../../../src/core/practice/warm-up-step';
import type { NoteEvent } from '../../../src/core/score/score';
import { readSymbol } from '../../../src/core/theory/chords';
import { asBpm, asPitchClass } from '../../../src/core/theory/units';
import { soakRuns } from '../../helpers/soak';

const METER_NAMES: readonly MeterName[] = ['4/4', '3/4', '12/8', '6/8'];
const cHarp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

const SPEC: WarmUpSpec = {
  chart: buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' }),
  harp: cHarp,
  technique: EVERY_TECHNIQUE,
  tempo: asBpm(100),
  swing: 2,
  tabStyle: 'letters',
  seed: 1,
};

const anyKey = fc.integer({ min: 0, max: 11 }).map(asPitchClass);

const ownChart = (bars: number, meter: MeterName) =>
  layChart({
    title: 'Own',
    mode: 'minor',
    tonic: 'A',
    meter: METERS[meter],
    bars: Array.from({ length: bars }, (_, i) =>
      [readSymbol(i % 2 === 0 ? 'Am7' : 'E7b9')].flatMap((each) => each ?? []),
    ),
  });

const anySpec: fc.Arbitrary<WarmUpSpec> = fc.record({
  chart: fc.oneof(
    fc
      .record({ form: fc.constantFrom(...FORM_IDS), key: anyKey, meter: fc.constantFrom(...METER_NAMES) })
      .map(buildChart),
    fc
      .tuple(fc.constantFrom(1, 2, 5, 31, 128), fc.constantFrom(...METER_NAMES))
      .map(([bars, meter]) => ownChart(bars, meter)),
  ),
  harp: fc
    .record({
      tuning: fc.constantFrom(...TUNINGS),
      key: anyKey,
      octave: fc.constant(0),
      valved: fc.subarray([1, 2, 3, 4, 5, 6, 7, 8]),
    })
    .map(buildHarp),
  technique: fc.constantFrom(
    NATURAL_NOTES,
    EVERY_TECHNIQUE,
    { ...NATURAL_NOTES, drawBends: true },
    { ...NATURAL_NOTES, off: cHarp.sounds.map(soundId) },
  ),
  tempo: fc.integer({ min: 40, max: 280 }).map(asBpm),
  swing: fc.constantFrom(1, 2, 3.5),
  tabStyle: fc.constantFrom(...TAB_STYLES.map(({ id }) => id)),
  seed: fc.integer(),
});

describe('warmUp', () => {
  it('runs for five to ten minutes for any song, harp, technique and tempo', () => {
    fc.assert(
      fc.property(anySpec, (spec) => {
        const { steps, seconds } = warmUp(spec);
        expect(seconds).toBeGreaterThanOrEqual(300);
        expect(seconds).toBeLessThanOrEqual(600);
        expect(steps.reduce((sum, step) => sum + step.seconds, 0)).toBeCloseTo(seconds, 6);
        for (const { band, tempo, seconds: length } of steps) {
          if (band === null) continue;
          const { bars, meter } = band.chart;
          expect(length).toBeCloseTo((band.passes * bars.length * meter.beats * 60) / tempo, 6);
          expect(band.chart.length).toBe(bars.length * barTicks(meter));
        }
      }),
      { numRuns: soakRuns(1200) },
    );
  });

  it('keeps cues and notes in order inside their step, and rests between the steps', () => {
    fc.assert(
      fc.property(anySpec, (spec) => {
        const { steps } = warmUp(spec);
        steps.forEach(({ band, cues, lead }, i) => {
          expect(band === null).toBe(i % 2 === 0);
          const bars = band === null ? 0 : band.passes * band.chart.bars.length;
          const length = band === null ? 0 : band.passes * band.chart.length;
          expect(cues.map(({ bar }) => bar)).toEqual(cues.map(({ bar }) => bar).sort((a, b) => a - b));
          for (const { bar, text } of cues) {
            expect(bar).toBeLessThan(bars);
            expect(text.trim()).not.toBe('');
          }
          const events: readonly NoteEvent[] = lead;
          expect(events.map(({ at }) => at)).toEqual(events.map(({ at }) => at).sort((a, b) => a - b));
          for (const { at, length: lasts } of events) expect(at + lasts).toBeLessThanOrEqual(length);
        });
        expect(JSON.parse(JSON.stringify(warmUp(spec)))).toEqual(warmUp(spec));
      }),
      { numRuns: soakRuns(5000) },
    );
  });

  it('goes from breathing over tones, climbs and bends to trading', () => {
    const { steps, cautions } = warmUp(SPEC);
    expect(steps.map(({ title }) => title)).toEqual([
      ...['Breathe', 'Long tones', 'Rest', 'Chord-tone climbs', 'Rest', 'Bends', 'Rest', 'Trading', 'Done'],
    ]);
    expect(cautions.join(' ')).toMatch(/light-headed.*force a reed.*level.*doctor or a teacher/);
    for (const { instruction } of steps) expect(instruction).toMatch(/^[A-Z].*\.$/);
  });

  it.each([40, 60, 100, 280])(
    'at %i beats a minute shows each bend of a standard harp over a chord it is in',
    (tempo) => {
      const { steps } = warmUp({ ...SPEC, tempo: asBpm(tempo) });
      const bends = steps[5];
      const shown = new Set(bends?.cues.flatMap(({ text }) => /^Your turn: (.*)$/.exec(text)?.[1] ?? []));
      const all = cHarp.sounds.filter(({ technique }) => technique === 'bend').map(soundId);
      expect([...shown].sort()).toEqual([...all].sort());
      for (const { at, pitch } of bends?.lead ?? []) {
        const chord = bends?.band?.chart.bars.find((bar) => bar.at === at)?.chords[0]?.chord;
        expect(chord?.tones.map(({ pitchClass }) => pitchClass)).toContain(asPitchClass(pitch));
      }
      expect(bends?.lead.length).toBeGreaterThanOrEqual(12);
    },
  );

  it('puts soft starts in place of bends where the player has none', () => {
    const { steps } = warmUp({ ...SPEC, technique: NATURAL_NOTES });
    expect(steps[5]).toMatchObject({ title: 'Soft starts' });
    expect(steps.flatMap(({ cues }) => cues.map(({ text }) => text)).join(' ')).not.toContain("'");
  });

  it('keeps a moderate tempo and holds tones for a breath', () => {
    expect(warmUp({ ...SPEC, tempo: asBpm(240) }).steps.map(({ tempo }) => tempo)).toEqual(
      Array(9).fill(110),
    );
    const [, tones] = warmUp(SPEC).steps;
    expect(tones?.cues.slice(0, 4).map(({ bar, text }) => ({ bar, text }))).toEqual([
      { bar: 0, text: 'Hold 1D' },
      { bar: 3, text: 'Breathe' },
      { bar: 5, text: 'Hold 2D' },
      { bar: 8, text: 'Breathe' },
    ]);
  });

  it('names the one note a cue is about, and says the rest in a word', () => {
    const { steps } = warmUp(SPEC);
    const shown = (step: number) =>
      steps[step]?.cues.slice(0, 3).map(({ word, sound }) => [word, sound === null ? null : soundId(sound)]);
    expect(shown(1)).toEqual([
      ['Hold', '1D'],
      ['Breathe', null],
      ['Hold', '2D'],
    ]);
    expect(shown(5)?.map(([word]) => word)).toEqual(['Listen', 'Your turn', 'Breathe']);
    expect(shown(5)?.[0]?.[1]).toBe(shown(5)?.[1]?.[1]);
  });

  it('trades with listening and answering told apart', () => {
    const trading = warmUp(SPEC).steps[7];
    expect(trading?.cues.slice(0, 3).map(({ bar, text }) => ({ bar, text }))).toEqual([
      { bar: 0, text: 'Listen' },
      { bar: 2, text: 'Your turn' },
      { bar: 4, text: 'Listen' },
    ]);
    expect(trading?.lead.length).toBeGreaterThan(5);
  });
});
