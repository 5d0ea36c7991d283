import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandTurns, tradeTurns } from '../../../src/core/arranger/band-turn';
import type { Plan } from '../../../src/core/arranger/program';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { soakRuns } from '../../helpers/soak';
import { testProgram } from '../../helpers/test-charts';

const typed = (text: string) =>
  readChart(text, { tonic: 'G', mode: 'major', meter: '4/4', title: 'Typed' }).chart ?? expect.fail();

const programWith = (plan: Partial<Plan>) => testProgram('shuffle', { plan: { countInBars: 0, ...plan } });

describe('whose turn it is', () => {
  it.each(['trade fours', 'trade twos'] as const)('agrees with what is played: %s', (arc) => {
    const program = programWith({ arc });
    for (const chorus of [0, 1, 2]) {
      const section = sectionAt(program, chorus);
      if (!section) throw new Error('no chorus');
      const { chart, score } = section;
      const turns = bandTurns(program.plan, chorus, chart.bars);
      chart.bars.forEach((bar, i) => {
        const walking = score.events.filter(
          ({ part, at }) => part === 'bass' && at > bar.at && at < bar.at + bar.length,
        );
        expect([chorus, i, turns[i]]).toEqual([chorus, i, walking.length === 0 ? 'drums' : 'band']);
      });
    }
  });

  it('agrees with what is silent', () => {
    const program = programWith({ dropOut: { play: 3, rest: 2 } });
    for (const chorus of [0, 1]) {
      const section = sectionAt(program, chorus);
      if (!section) throw new Error('no chorus');
      section.chart.bars.forEach((bar, i) => {
        const heard = section.score.events.some(({ at }) => at >= bar.at && at < bar.at + bar.length);
        expect(bandTurns(program.plan, chorus, section.chart.bars)[i] === 'silent').toBe(!heard);
      });
    }
  });

  const turnsOver = (text: string, arc: Plan['arc'], chorus: number): string => {
    const { plan } = programWith({ arc });
    return bandTurns(plan, chorus, typed(text).bars)
      .map((turn) => turn[0])
      .join('');
  };

  // What a drummer and a soloist would agree on before they begin: common practice, no source.
  it.each([
    [8, 'bbbbdddd', 'bbbbdddd'],
    [9, 'bbbbddddd', 'bbbbddddd'],
    [10, 'bbbbddddbb', 'ddddbbbbdd'],
    [11, 'bbbbddddbbb', 'ddddbbbbddd'],
    [12, 'bbbbddddbbbb', 'ddddbbbbdddd'],
    [5, 'bbbbb', 'ddddd'],
  ])('fours over %i bars begin with the form, and what is left is a shorter turn', (bars, second, third) => {
    const text = Array.from({ length: bars }, () => 'G7').join(' | ');
    expect([1, 2].map((chorus) => turnsOver(text, 'trade fours', chorus))).toEqual([second, third]);
  });

  it('fours and twos begin with every section of a song', () => {
    const text = '[Verse]\nG7 | C7 | G7 | D7 | G7 | D7\n[Bridge]\nC7 | C7 | G7 | G7 | D7';
    expect(turnsOver(text, 'trade fours', 1)).toBe('bbbbddbbbbb');
    expect(turnsOver(text, 'trade twos', 1)).toBe('bbddbbddbbb');
  });

  it('never lasts longer than five bars nor crosses the top of the form, and hands on every time', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.constantFrom('trade fours', 'trade twos'),
        fc.integer({ min: 1, max: 40 }),
        (length, arc, chorus) => {
          const bars = Array.from({ length }, () => ({}));
          const { plan } = programWith({ arc });
          const [here, next] = [0, 1].map((more) => tradeTurns(plan, chorus + more, bars) ?? []);
          expect(here?.[0]?.begins).toBe(true);
          const starts = here?.flatMap(({ begins }, bar) => (begins ? [bar] : [])) ?? [];
          const most = arc === 'trade fours' ? 5 : 3;
          for (const [i, start] of starts.entries()) {
            expect((starts[i + 1] ?? length) - start).toBeLessThanOrEqual(most);
            if (i > 0) expect(here?.[start]?.drums).not.toBe(here?.[start - 1]?.drums);
          }
          expect(next?.[0]?.drums).not.toBe(here?.at(-1)?.drums);
        },
      ),
      { numRuns: soakRuns(2000) },
    );
  });

  it('agrees with what is played of a repeated range', () => {
    const repeat = { from: 4, to: 11 };
    const program = programWith({ arc: 'trade fours', repeat });
    const heard = [1, 2].map((pass) => {
      const { chart, score } = sectionAt(program, pass) ?? expect.fail();
      const shown = bandTurns(program.plan, pass, program.chart.bars.slice(repeat.from, repeat.to + 1));
      chart.bars.forEach((bar, i) => {
        const walks = score.events.some(
          ({ part, at }) => part === 'bass' && at > bar.at && at < bar.at + bar.length,
        );
        expect([pass, i, shown[i]]).toEqual([pass, i, walks ? 'band' : 'drums']);
      });
      return shown.map((turn) => turn[0]).join('');
    });
    expect(heard).toEqual(['bbbbdddd', 'bbbbdddd']);
  });
});
