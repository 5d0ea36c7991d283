import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { FEEL_IDS, type FeelId, feelOf } from '../../../src/core/feels/feels';
import type { Style } from '../../../src/core/players/style';
import { CHORD_VOICES } from '../../../src/core/score/voices';
import { minorNinthsOf } from '../../helpers/band-figures';
import { inBar, partOf, sectionOf } from '../../helpers/score-events';
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
});

describe('stop-time', () => {
  it('has pick-ups by the bass into the next bar where it strikes on 1 alone', () => {
    const counts = [1, 2, 3, 4, 5, 6].map((seed) => {
      const section = sectionOf(testProgram('shuffle', { style: { seed, stopTime: 'whole chorus' } }), 1);
      return section.chart.bars.map((_, bar) =>
        inBar(section, bar, 'bass')
          .map(({ at }) => at)
          .join(),
      );
    });
    const plain = counts.filter((bars) => bars[0] === '0');
    expect(plain.length).toBeGreaterThan(0);
    for (const bars of plain) expect(bars.slice(0, 4)).toEqual(['0', '0,1760', '0', '0,1760']);
    const figured = counts.filter((bars) => bars[0] !== '0');
    expect(figured.length).toBeGreaterThan(0);
    for (const bars of figured) {
      expect(bars[0]).toBe('0,800');
      // The last bar leads back into time in its own way.
      const pickUps = bars.slice(0, -1).flatMap((bar, index) => (bar.endsWith(',1760') ? [index] : []));
      expect(pickUps).toEqual([3, 7]);
    }
  });
});
