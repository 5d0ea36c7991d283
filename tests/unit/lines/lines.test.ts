import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { buildHarp } from '../../../src/core/harp/build-harp';
import {
  EVERY_TECHNIQUE,
  isInReach,
  NATURAL_NOTES,
  type TechniqueChoice,
} from '../../../src/core/harp/reach';
import { soundId } from '../../../src/core/harp/tab';
import { RICHTER, TUNINGS } from '../../../src/core/harp/tunings';
import { VARIETY } from '../../../src/core/lines/line-search';
import { lineTab } from '../../../src/core/lines/line-tab';
import { LINE_TASTES } from '../../../src/core/lines/line-tastes';
import { findLine, type LineSpec } from '../../../src/core/lines/lines';
import { guideTones } from '../../../src/core/theory/chords';
import { asPitchClass } from '../../../src/core/theory/units';
import { anyFormChart } from '../../helpers/program-arbitraries';

const cHarp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
const standardInG = buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' });

const SPEC: LineSpec = {
  chart: standardInG,
  harp: cHarp,
  technique: EVERY_TECHNIQUE,
  kind: 'guide tones',
  taste: 'even',
  seed: 0,
};

const anyTechnique: fc.Arbitrary<TechniqueChoice> = fc.record({
  drawBends: fc.boolean(),
  blowBends: fc.boolean(),
  overbends: fc.boolean(),
  off: fc.subarray(['2D', '5D', "3D'", '4B', '6OB']),
});

const anySpec: fc.Arbitrary<LineSpec> = fc.record({
  chart: anyFormChart,
  harp: fc
    .record({
      tuning: fc.constantFrom(...TUNINGS),
      key: fc.integer({ min: 0, max: 11 }).map(asPitchClass),
      octave: fc.constantFrom(0, -1),
    })
    .map(buildHarp),
  technique: anyTechnique,
  kind: fc.constantFrom(...(['guide tones', 'chord tones', 'arpeggio'] as const)),
  pace: fc.constantFrom(...([1, 2, 4] as const)),
  taste: fc.constantFrom(...LINE_TASTES.map(({ id }) => id)),
  seed: fc.constantFrom(0, 1, 77),
});

describe('findLine', () => {
  it('fills every place with a wanted tone in reach, or says what is missing', () => {
    fc.assert(
      fc.property(anySpec, (spec) => {
        const { notes, rests } = findLine(spec);
        const places = [...notes, ...rests].sort((a, b) => a.at - b.at);
        let at = 0;
        for (const place of places) {
          expect(place.at).toBe(at);
          at += place.length;
        }
        expect(at).toBe(spec.chart.length);
        for (const { at: start, chord, sound, degree, name } of notes) {
          const tones = spec.kind === 'guide tones' ? guideTones(chord) : chord.tones;
          expect(tones).toContainEqual({ degree, name, pitchClass: asPitchClass(sound.pitch) });
          expect(isInReach(sound, spec.technique)).toBe(true);
          const span = spec.chart.bars.flatMap((bar) => bar.chords).findLast((each) => each.at <= start);
          expect(chord).toEqual(span?.chord);
        }
        for (const { chord, degrees } of rests) {
          const wanted = new Set<number>(
            chord.tones.filter(({ degree }) => degrees.includes(degree)).map(({ pitchClass }) => pitchClass),
          );
          const able = spec.harp.sounds.filter((sound) => isInReach(sound, spec.technique));
          expect(able.filter((sound) => wanted.has(asPitchClass(sound.pitch)))).toEqual([]);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('costs no more with more technique, never less with a seed, and repeats itself', () => {
    fc.assert(
      fc.property(anySpec, (spec) => {
        const line = findLine(spec);
        const best = findLine({ ...spec, seed: 0 });
        const able = findLine({ ...spec, seed: 0, technique: EVERY_TECHNIQUE });
        expect(able.cost.total).toBeLessThanOrEqual(best.cost.total + 1e-9);
        expect(line.cost.total).toBeGreaterThanOrEqual(best.cost.total - 1e-9);
        const places = line.notes.length + line.rests.length;
        expect(line.cost.total).toBeLessThanOrEqual(best.cost.total + VARIETY * places);
        expect(findLine(spec)).toEqual(line);
        expect(JSON.parse(JSON.stringify(line))).toEqual(line);
      }),
      { numRuns: 40 },
    );
  });

  it('has several good lines up its sleeve', () => {
    const lines = [1, 2, 3, 4, 5, 6, 7, 8].map((seed) =>
      lineTab(findLine({ ...SPEC, kind: 'chord tones', pace: 2, seed }), standardInG, 'letters').join(' '),
    );
    expect(new Set(lines).size).toBeGreaterThanOrEqual(5);
  });

  it('follows the taste: gentle stays off overbends where bold takes them', () => {
    const used = (taste: LineSpec['taste']): readonly string[] =>
      findLine({ ...SPEC, taste }).notes.map(({ sound }) => sound.technique);
    expect(used('gentle')).not.toContain('overbend');
    expect(used('bold')).toContain('overbend');
  });

  it('moves an arpeggio through neighbouring chord tones, one on every beat', () => {
    const { notes } = findLine({ ...SPEC, kind: 'arpeggio' });
    expect(notes).toHaveLength(48);
    const repeated = notes.filter((note, i) => {
      const before = notes[i - 1];
      return before?.sound.pitch === note.sound.pitch && before.chord.symbol === note.chord.symbol;
    });
    expect(repeated).toEqual([]);
  });

  it('turns the breath sooner where the breath is short', () => {
    const longestRun = (comfortableBeats: number): number => {
      const spec: LineSpec = { ...SPEC, kind: 'chord tones', pace: 4, technique: NATURAL_NOTES };
      const breaths = findLine({ ...spec, comfortableBeats }).notes.map(({ sound }) => sound.breath);
      let run = 0;
      return Math.max(
        ...breaths.map((breath, i) => {
          run = i % 16 !== 0 && breaths[i - 1] === breath ? run + 1 : 1;
          return run;
        }),
      );
    };
    expect(longestRun(1)).toBeLessThan(longestRun(32));
  });

  it('refuses a breath that cannot be', () => {
    expect(() => findLine({ ...SPEC, comfortableBeats: 0 })).toThrow('1 to 32 beats, got 0');
  });
});

describe('lineTab', () => {
  it('writes the tab of each bar in the chosen style', () => {
    const line = findLine({ ...SPEC, taste: 'bold' });
    expect(lineTab(line, standardInG, 'letters')).toEqual(line.notes.map(({ sound }) => soundId(sound)));
    expect(lineTab(line, standardInG, 'signs').slice(3, 6)).toEqual(['-5', '5', '5']);
  });
});
