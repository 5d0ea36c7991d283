import { describe, expect, it } from 'vitest';
import type { Section } from '../../../src/core/arranger/program';
import { sectionAt } from '../../../src/core/arranger/section-at';
import type { NoteEvent, PartId } from '../../../src/core/score/score';
import { asMidi, asTicks } from '../../../src/core/theory/units';
import { inBar, partOf, sectionOf } from '../../helpers/score-events';
import { testProgram } from '../../helpers/test-charts';

const note = (at: number, length = 240, pitch = 67): NoteEvent => ({
  part: 'lead',
  at: asTicks(at),
  length: asTicks(length),
  pitch: asMidi(pitch),
  velocity: 90,
});

const leadAt = (
  feel: Parameters<typeof testProgram>[0],
  plan: object,
  takes: readonly (readonly NoteEvent[])[],
  index: number,
) => {
  const program = testProgram(feel, { plan: { countInBars: 0, ...plan } });
  const section = sectionAt({ ...program, leads: { [program.chart.key]: takes } }, index);
  return (section?.score.events ?? [])
    .filter(({ part }) => part === 'lead')
    .map(({ at, pitch }) => [at, pitch]);
};

describe('the lead of a program', () => {
  it.each([
    ['shuffle', 320],
    ['straight', 240],
    ['rock', 240],
  ] as const)('swings as %s does', (feel, offBeat) => {
    expect(leadAt(feel, {}, [[note(0), note(240)]], 0)).toEqual([
      [0, 67],
      [offBeat, 67],
    ]);
  });

  it('leaves triplets alone', () => {
    expect(leadAt('shuffle', {}, [[note(160, 160), note(320, 160)]], 0)).toEqual([
      [160, 67],
      [320, 67],
    ]);
  });

  it('plays one take after another over the choruses', () => {
    const takes = [[note(0, 240, 60)], [note(0, 240, 64)]];
    expect([0, 1, 2].map((chorus) => leadAt('shuffle', {}, takes, chorus)[0]?.[1])).toEqual([60, 64, 60]);
  });

  it('plays only the repeated bars, from their start', () => {
    const takes = [[note(0), note(4 * 1920)]];
    expect(leadAt('shuffle', { repeat: { from: 4, to: 5 } }, takes, 0)).toEqual([[0, 67]]);
  });

  it('leaves the last two bars to the ending', () => {
    const takes = [[note(9 * 1920), note(10 * 1920), note(11 * 1920)]];
    expect(leadAt('shuffle', { choruses: 1 }, takes, 0)).toEqual([[9 * 1920, 67]]);
  });

  it('is heard over drums alone and silent where the band drops out', () => {
    const takes = [[note(0), note(1920)]];
    expect(leadAt('shuffle', { sounding: 'drums' }, takes, 0)).toHaveLength(2);
    expect(leadAt('shuffle', { dropOut: { play: 1, rest: 1 } }, takes, 0)).toEqual([[0, 67]]);
  });
});

describe('the player’s turn in trading', () => {
  const FEELS = ['shuffle', 'straight', 'swing', 'rhumba', 'funk-blues'] as const;
  const calls = [0, 1, 4, 5, 8, 9].map((bar) => note(bar * 1920));

  /** Second choruses of some feels, with an organ beside the first player. */
  const choruses = (traded: boolean) =>
    FEELS.flatMap((feel) =>
      [1, 2].map((seed) => {
        const program = testProgram(feel, { style: { seed, second: 'organ' } });
        return sectionOf(traded ? { ...program, leads: { [program.chart.key]: [calls] } } : program, 1);
      }),
    );
  const strokesIn = (sections: readonly Section[], bars: readonly number[], part: PartId): number =>
    sections
      .flatMap((section) => bars.map((bar) => new Set(inBar(section, bar, part).map(({ at }) => at)).size))
      .reduce((sum, strokes) => sum + strokes, 0);

  it('thins the chords out, and silences the second player', () => {
    const [alone, traded] = [choruses(false), choruses(true)];
    const share = (bars: readonly number[]) =>
      strokesIn(traded, bars, 'chords') / strokesIn(alone, bars, 'chords');
    expect(share([2, 3, 6, 7])).toBeLessThan(0.75);
    expect(share([0, 1, 4, 5])).toBeGreaterThan(0.95);
    expect(strokesIn(alone, [2, 3, 6, 7], 'second')).toBeGreaterThan(0);
    expect(strokesIn(traded, [2, 3, 6, 7], 'second')).toBe(0);
  });
});

it('chords are never at their busiest while the lead plays', () => {
  // The sixth chorus of a breathing song is its fullest.
  const strokes = (led: boolean): number =>
    (['shuffle', 'boogie', 'straight', 'funk-blues'] as const)
      .flatMap((feel) =>
        [1, 2, 3].map((seed) => {
          const program = testProgram(feel, { style: { seed }, plan: { arc: 'breathe' } });
          const line = program.chart.bars.map(({ at }) => note(at));
          const leads = led ? { leads: { [program.chart.key]: [line] } } : {};
          return partOf(sectionOf({ ...program, ...leads }, 5), 'chords');
        }),
      )
      .reduce((sum, notes) => sum + new Set(notes.map(({ at }) => at)).size, 0);
  expect(strokes(true)).toBeLessThan(strokes(false) * 0.93);
  expect(strokes(true)).toBeGreaterThan(strokes(false) * 0.5);
});
