import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breathingEnergy } from '../../../src/core/arranger/energy';
import { FEEL_IDS, type FeelId, feelOf } from '../../../src/core/feels/feels';
import { bandFigures, bassRunOf } from '../../helpers/band-figures';
import { partOf, sectionOf } from '../../helpers/score-events';
import { inSoak, SOAK_TIMEOUT, soakRuns } from '../../helpers/soak';
import { testChart, testProgram } from '../../helpers/test-charts';

/**
 * Most of the chords' short strokes that fall together with the bass, where that is more than half: a bass that plays
 * nearly every eighth leaves little between.
 */
const MOST_WITH_BASS: Partial<Record<FeelId, number>> = {
  'double-shuffle': 0.68,
  rock: 0.65,
};

/**
 * The same of kick and backbeat, where that is more: the snare of a double shuffle is on every eighth. Players whose
 * figures interlock have less.
 */
const MOST_WITH_DRUMS: Partial<Record<FeelId, number>> = {
  'double-shuffle': 0.66,
  train: 0.55,
  rhumba: 0.35,
  rock: 0.45,
};

const FORMS = ['standard-turnaround', 'minor-b', 'jazz-bebop', 'eight-half-bar', 'sixteen-b'] as const;
const songs = FEEL_IDS.flatMap((feel) =>
  inSoak(
    FORMS.flatMap((form) => [7, 8, 9].map((seed) => ({ feel, form, seed, key: (seed * 5) % 12 }))),
    [{ feel, form: 'standard-turnaround', seed: 7, key: 7 }] as const,
  ),
);

// Bounds of this project (what an examination of 108 saved songs found tiring), not of a source.
describe.each(songs)('24 choruses of $feel over $form, seed $seed', ({ feel, seed, form, key }) => {
  const figures = bandFigures(feel, seed, { form, key });

  it('never repeat a chorus, and few bars of one come again in the same place of another', () => {
    expect(figures.sameChoruses).toBe(0);
    expect(figures.similar.bass).toBeLessThan(0.3);
    expect(figures.similar.chords).toBeLessThan(0.06);
  });

  it('spread the home chord over more than two voicings', () => {
    // Eight bars have a few strokes on it only.
    expect(figures.topTwo).toBeLessThan(form === 'eight-half-bar' ? 0.65 : 0.5);
  });

  it('answer bass and drums rather than double them, where they leave room', () => {
    // Half of an eight-bar form is turnaround, whose chords change with the beats.
    const short = form === 'eight-half-bar' ? 0.06 : 0;
    expect(figures.withBass).toBeLessThan((MOST_WITH_BASS[feel] ?? 0.56) + short);
    expect(figures.withDrums).toBeLessThan((MOST_WITH_DRUMS[feel] ?? 0.5) + short);
  });

  it('fill the last bar in half to nine tenths of the choruses, bars 4 and 8 in about three of ten', () => {
    const [phrases, last] = figures.fills;
    expect(last).toBeGreaterThan(0.45);
    expect(last).toBeLessThan(0.95);
    expect(phrases).toBeLessThan(0.5);
    expect(phrases).toBeGreaterThan(0.1);
  });

  it('keep the feet going under nine fills of ten, and crash after half of them at most', () => {
    expect(figures.foot).toBeGreaterThan(0.75);
    expect(figures.kick).toBeGreaterThan(0.95);
    expect(figures.crash).toBeLessThanOrEqual(0.5);
  });
});

it(
  'no bass keeps one rhythm for more than 8 bars, through the choruses too',
  () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FEEL_IDS),
        fc.nat(1_000_000),
        fc.constantFrom('standard', 'jazz-bebop', 'minor-b', 'eight-half-bar', 'twenty-four'),
        fc.integer({ min: 0, max: 11 }),
        (feel, seed, form, key) => {
          const chart = testChart(form, key, feelOf(feel).meter ?? '4/4');
          const program = testProgram(feel, { chart, style: { seed }, plan: { turnarounds: 'varied' } });
          expect(bassRunOf([0, 1, 2, 3].map((chorus) => sectionOf(program, chorus)))).toBeLessThanOrEqual(8);
        },
      ),
      { numRuns: soakRuns(5000) },
    );
  },
  SOAK_TIMEOUT,
);

/** The longest silence of the chords in seconds, where they play at all. */
const longestSilence = (feel: FeelId, seed: number, chorus: number): number => {
  const program = testProgram(feel, { style: { seed }, plan: { arc: 'breathe' } });
  const section = sectionOf(program, chorus);
  const seconds = 60 / (program.tempo * section.chart.meter.beatTicks);
  let until = 0;
  let longest = 0;
  for (const { at, length } of partOf(section, 'chords')) {
    longest = Math.max(longest, (at - until) * seconds);
    until = Math.max(until, at + length);
  }
  return longest;
};

it.each(FEEL_IDS)('%s: sparse choruses leave the chords out for five seconds at most', (feel) => {
  for (let seed = 1; seed <= 12; seed += 1) expect(longestSilence(feel, seed, 0)).toBeLessThan(5);
});

describe('the breathing arc', () => {
  it('drifts: later courses are as long and as high as they like, none like the one before', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const path = Array.from({ length: 60 }, (_, chorus) => breathingEnergy(seed, chorus));
      const breaks = path.flatMap((energy, chorus) => (energy === 'break' ? [chorus] : []));
      const gaps = breaks.slice(1).map((chorus, i) => chorus - (breaks[i] ?? 0));
      expect(new Set(gaps).size).toBeGreaterThan(2);
      const numbers = path.filter((energy) => energy !== 'break');
      expect(Math.min(...numbers)).toBeGreaterThanOrEqual(0.2);
      expect(Math.max(...numbers)).toBeLessThanOrEqual(0.98);
    }
  });

  it.each(FEEL_IDS)('%s: the top of the chords climbs with the energy of the chorus', (feel) => {
    const topOf = (chorus: number): number => {
      const tops = [1, 2, 3].flatMap((seed) => {
        const plan = { arc: 'breathe' } as const;
        const section = sectionOf(testProgram(feel, { style: { seed, leaveRoom: false }, plan }), chorus);
        const notes = partOf(section, 'chords');
        const strokes = [...new Set(notes.map(({ at }) => at))].map((stroke) =>
          notes.filter(({ at }) => at === stroke).map(({ pitch }) => pitch),
        );
        return strokes.filter((pitches) => pitches.length > 2).map((pitches) => Math.max(...pitches));
      });
      return tops.reduce((sum, top) => sum + top, 0) / tops.length;
    };
    expect(topOf(5)).toBeGreaterThan(topOf(0) + 1);
  });

  it('crashes on other choruses in other courses', () => {
    const program = testProgram('shuffle', { plan: { arc: 'breathe' }, style: { seed: 3 } });
    const crashes = Array.from({ length: 24 }, (_, chorus) =>
      partOf(sectionOf(program, chorus), 'drums').some(({ at, pitch }) => at === 0 && pitch === 49),
    );
    for (const turn of [4, 5, 6]) {
      const [first, second] = [crashes.slice(0, 2 * turn), crashes.slice(turn, 3 * turn)];
      expect(first).not.toEqual(second);
    }
  });
});
