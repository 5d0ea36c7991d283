/** What a bass line does over a chorus, as a band leader hears it in printed choruses. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Section } from '../../../src/core/arranger/program';
import { FEEL_IDS, type FeelId, feelOf } from '../../../src/core/feels/feels';
import { bassRunOf } from '../../helpers/band-figures';
import { inBar, partOf, sectionOf } from '../../helpers/score-events';
import { testChart, testProgram } from '../../helpers/test-charts';

type Form = Parameters<typeof testChart>[0];

const choruses = (feel: FeelId, form: Form, { seed = 3, key = 7, count = 4 } = {}): readonly Section[] => {
  const chart = testChart(form, key, feelOf(feel).meter ?? '4/4');
  const program = testProgram(feel, {
    chart,
    style: { seed },
    plan: { arc: 'breathe', turnarounds: 'varied' },
  });
  return Array.from({ length: count }, (_, index) => sectionOf(program, index));
};

const rhythmOf = (section: Section, bar: number): string =>
  inBar(section, bar, 'bass')
    .map(({ at }) => at)
    .join();

const share = (flags: readonly boolean[]): number => flags.filter(Boolean).length / flags.length;

describe('a bass line', () => {
  it.each(FEEL_IDS)('of %s leads to a new chord and does not take its root before its time', (feel) => {
    const taken = (['standard', 'minor-b', 'eight-half-bar'] as const).flatMap((form) =>
      choruses(feel, form).flatMap((section) => {
        const bass = partOf(section, 'bass');
        const spans = section.chart.bars.flatMap(({ chords }) => chords);
        return spans.slice(1).flatMap(({ at, chord }, i) => {
          const before = bass.findLast((note) => note.at < at - 1);
          const from = spans[i];
          if (before === undefined || from === undefined || before.at <= from.at) return [];
          return from.chord.bass === chord.bass ? [] : [before.pitch % 12 === chord.bass];
        });
      }),
    );
    expect(taken.length).toBeGreaterThan(40);
    expect(share(taken)).toBeLessThan(0.03);
  });

  it('of a figure does not say it three times in the same notes, nor always in the same rhythm', () => {
    const phrases = (['rhumba', 'straight', 'train', 'rock', 'funk-blues'] as const).flatMap((feel) =>
      [1, 2, 3].flatMap((seed) =>
        choruses(feel, 'standard', { seed }).map((section) => {
          const [first, ...others] = [0, 1, 2].map((bar) => ({
            rhythm: rhythmOf(section, bar),
            notes: inBar(section, bar, 'bass')
              .map(({ pitch }) => pitch)
              .join(),
          }));
          const alike = others.every(({ rhythm }) => rhythm === first?.rhythm);
          return { alike, same: alike && others.every(({ notes }) => notes === first?.notes) };
        }),
      ),
    );
    expect(share(phrases.map(({ alike }) => alike))).toBeLessThan(0.8);
    expect(share(phrases.map(({ same }) => same))).toBeLessThan(0.5);
  });

  it('never keeps a figure of two notes for long either', () => {
    expect(bassRunOf(choruses('funk-blues', 'sixteen-b', { seed: 4, key: 4 }))).toBeLessThanOrEqual(5);
  });

  it('comes home from a turnaround by no more than an octave', () => {
    const leaps = [1, 2, 3, 4, 5, 6].flatMap((seed) => {
      const sections = choruses('shuffle', 'eight-half-bar', { seed, key: (seed * 7) % 12 });
      return sections.slice(1).map((section, i) => {
        const before = sections[i]?.score.events.findLast(({ part }) => part === 'bass');
        return Math.abs((partOf(section, 'bass')[0]?.pitch ?? 0) - (before?.pitch ?? 0));
      });
    });
    expect(Math.max(...leaps)).toBeLessThanOrEqual(12);
  });

  it('in two stands on roots and fifths, and does not strike one note twice', () => {
    const bars = [1, 2, 3, 4].flatMap((seed) =>
      choruses('swing', 'standard', { seed, count: 1 }).flatMap((section) =>
        section.chart.bars.slice(0, 10).map((bar, index) => {
          const [first, middle] = inBar(section, index, 'bass').filter(({ at }) => at % 960 === 0);
          const root = bar.chords[0]?.chord.root ?? 0;
          return {
            again: first?.pitch === middle?.pitch,
            plain: [0, 7].includes(((middle?.pitch ?? 0) - root + 120) % 12),
          };
        }),
      ),
    );
    expect(bars.filter(({ again }) => again)).toEqual([]);
    expect(share(bars.map(({ plain }) => plain))).toBeGreaterThan(0.5);
  });
});
