import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { FEEL_IDS, type FeelId, feelOf } from '../../../src/core/feels/feels';
import type { Style } from '../../../src/core/players/style';
import { CHORD_VOICES } from '../../../src/core/score/voices';
import { minorNinthsOf } from '../../helpers/band-figures';
import { inBar, partOf, sectionOf } from '../../helpers/score-events';
import { soakRuns } from '../../helpers/soak';
import { testChart, testProgram } from '../../helpers/test-charts';

const chorus = (feel: FeelId, style: Partial<Style>, index = 2) =>
  sectionOf(testProgram(feel, { style, plan: { arc: 'breathe' } }), index);

const lowest = (events: readonly { readonly pitch: number }[]) =>
  Math.min(...events.map(({ pitch }) => pitch));

describe('a second chord player', () => {
  it.each(FEEL_IDS)('%s: is there when asked for, and rests in the sparse first chorus', (feel) => {
    const steady = (second: Style['second']) =>
      partOf(sectionOf(testProgram(feel, { style: { second } }), 1), 'second').length;
    expect(steady('none')).toBe(0);
    expect(steady('organ')).toBeGreaterThan(10);
    expect(steady('guitar')).toBeGreaterThan(10);
    expect(partOf(chorus(feel, { second: 'organ' }, 0), 'second').length).toBeLessThan(
      partOf(chorus(feel, { second: 'organ' }, 2), 'second').length,
    );
  });

  it('holds below the first as an organ, and chops above it as a guitar', () => {
    const held = chorus('shuffle', { second: 'organ' });
    const chopped = chorus('slow-12-8', { second: 'guitar' });
    const { beatTicks } = held.chart.meter;
    expect(partOf(held, 'second').filter(({ length }) => length > beatTicks).length).toBeGreaterThan(8);
    expect(lowest(partOf(held, 'second'))).toBeLessThanOrEqual(lowest(partOf(held, 'chords')) - 3);
    expect(partOf(chopped, 'second').every(({ length }) => length < beatTicks / 2)).toBe(true);
    expect(lowest(partOf(chopped, 'second'))).toBeGreaterThanOrEqual(lowest(partOf(chopped, 'chords')) + 3);
  });

  it.each(FEEL_IDS)('%s: chops between the strokes of the first', (feel) => {
    const section = chorus(feel, { second: 'guitar', chords: 'piano' });
    const first = new Set(partOf(section, 'chords').map(({ at }) => at));
    const chops = [...new Set(partOf(section, 'second').map(({ at }) => at))];
    expect(chops.length).toBeGreaterThan(4);
    expect(chops.filter((at) => [...first].some((other) => Math.abs(other - at) < 24))).toEqual([]);
  });

  it('pads no bar whose chords change with every beat', () => {
    const program = testProgram('shuffle', {
      style: { second: 'organ', seed: 3 },
      plan: { turnarounds: 'varied' },
    });
    const bars = [0, 1, 2, 3].flatMap((index) => {
      const section = sectionOf(program, index);
      return section.chart.bars.flatMap(({ chords }, bar) =>
        chords.length > 2 ? [inBar(section, bar, 'second').length] : [],
      );
    });
    expect(bars.length).toBeGreaterThan(2);
    expect(Math.max(...bars)).toBe(0);
  });

  it('strikes with the band in stop-time, and is quiet between', () => {
    const section = chorus('shuffle', { second: 'guitar', stopTime: 'first four bars' });
    const bass = inBar(section, 0, 'bass').map(({ at }) => at);
    expect(inBar(section, 0, 'second').every(({ at }) => bass.includes(at))).toBe(true);
    expect(inBar(section, 0, 'second').length).toBeGreaterThan(0);
  });

  it('rubs with nobody: no semitone beside the first player, no minor ninth over the bass, none silent with a gap in the voicings', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FEEL_IDS),
        fc.constantFrom(...FORM_IDS),
        fc.integer({ min: 0, max: 11 }),
        fc.constantFrom<Style['second']>('organ', 'guitar'),
        fc.constantFrom(...CHORD_VOICES),
        fc.record({ seed: fc.nat(1_000_000), leaveRoom: fc.boolean() }),
        (feel, form, key, second, chords, rest) => {
          const chart = testChart(form, key, feelOf(feel).meter ?? '4/4');
          const program = testProgram(feel, {
            chart,
            style: { second, chords, ...rest },
            plan: { turnarounds: 'varied' },
          });
          const section = sectionOf(program, 1);
          const [first, other] = [partOf(section, 'chords'), partOf(section, 'second')];
          const rubs = other.filter((note) =>
            first.some(
              ({ at, length, pitch }) =>
                Math.abs(pitch - note.pitch) === 1 && at < note.at + note.length && note.at < at + length,
            ),
          );
          expect(rubs).toEqual([]);
          expect(first.length).toBeGreaterThan(0);
          const seconds = {
            ...section,
            score: {
              ...section.score,
              events: section.score.events
                .filter(({ part }) => part !== 'chords')
                .map((event) => (event.part === 'second' ? { ...event, part: 'chords' as const } : event)),
            },
          };
          expect(minorNinthsOf(seconds)).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });

  // Common practice, no source.
  it.each(FEEL_IDS)('as a guitar in %s never chops on 1 and 3 alone', (feel) => {
    for (let seed = 1; seed <= 4; seed += 1) {
      const { chart, score } = chorus(feel, { seed, second: 'guitar' }, 1);
      const { beatTicks } = chart.meter;
      for (const { at, length } of chart.bars.slice(0, -2)) {
        const struck = score.events.filter(
          (event) => event.part === 'second' && event.at >= at && event.at < at + length,
        );
        const strong = struck.filter((event) => (event.at - at) % (2 * beatTicks) === 0);
        if (new Set(struck.map((event) => event.at)).size > 1)
          expect(strong.length).toBeLessThan(struck.length);
      }
    }
  });

  it('never strikes a single note', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FEEL_IDS),
        fc.constantFrom('organ', 'guitar'),
        fc.constantFrom('standard-turnaround', 'minor-b', 'jazz-bebop', 'sixteen-b'),
        fc.nat(1_000_000),
        (feel, second, form, seed) => {
          const chart = testChart(form, 7, feelOf(feel).meter ?? '4/4');
          const program = testProgram(feel, { chart, style: { seed, second }, plan: { arc: 'breathe' } });
          const notes = partOf(sectionOf(program, 2), 'second');
          const counts = new Map<number, number>();
          for (const { at } of notes) counts.set(at, (counts.get(at) ?? 0) + 1);
          expect([...counts].filter(([, count]) => count === 1)).toEqual([]);
        },
      ),
      { numRuns: soakRuns(20_000) },
    );
  });
});

describe('stop-time', () => {
  const struck = (seed: number): readonly string[] => {
    const section = sectionOf(testProgram('shuffle', { style: { seed, stopTime: 'whole chorus' } }), 1);
    return section.chart.bars.map((_, bar) =>
      inBar(section, bar, 'bass')
        .map(({ at }) => at)
        .join(),
    );
  };

  it('has a figure of two bars, and pick-ups by the bass: into every other bar where it strikes on 1 alone, else after each phrase', () => {
    const figures = Array.from({ length: 16 }, (_, seed) => {
      const bars = struck(seed);
      const [first, second] = bars.map((bar) => bar.replace(/,1760$/, ''));
      // The last bar leads back into time in its own way.
      const pickUps = bars.slice(0, -1).flatMap((bar, index) => (bar.endsWith(',1760') ? [index] : []));
      const plain = first === '0' && second === '0';
      expect(pickUps).toEqual(plain ? [1, 3, 5, 7, 9] : [3, 7]);
      for (const [index, bar] of bars.slice(0, 11).entries())
        expect(bar.replace(/,1760$/, '')).toBe(index % 2 === 0 ? first : second);
      return `${first} | ${second}`;
    });
    expect(figures).toContain('0 | 0');
    expect(new Set(figures).size).toBeGreaterThan(2);
  });

  it('strikes every chord that the chart shows, in the bars of a turnaround too', () => {
    fc.assert(
      fc.property(fc.constantFrom(...FEEL_IDS), fc.nat(1_000_000), (feel, seed) => {
        const program = testProgram(feel, {
          style: { seed, stopTime: 'whole chorus' },
          plan: { turnarounds: 'varied' },
        });
        const { chart, score } = sectionOf(program, 1);
        for (const part of ['bass', 'chords'] as const) {
          const at = new Set<number>(
            score.events.filter((event) => event.part === part).map((event) => event.at),
          );
          expect(chart.bars.flatMap(({ chords }) => chords).filter((span) => !at.has(span.at))).toEqual([]);
        }
      }),
      { numRuns: soakRuns(20_000) },
    );
  });
});
