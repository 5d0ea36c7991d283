import { describe, expect, it } from 'vitest';
import { bandTurn } from '../../../src/core/arranger/arc';
import type { Plan } from '../../../src/core/arranger/program';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { testProgram } from '../../helpers/test-charts';

const programWith = (plan: Partial<Plan>) => testProgram('shuffle', { plan: { countInBars: 0, ...plan } });

describe('whose turn it is', () => {
  it.each(['trade fours', 'trade twos'] as const)('agrees with what is played: %s', (arc) => {
    const program = programWith({ arc });
    for (const chorus of [0, 1, 2]) {
      const section = sectionAt(program, chorus);
      if (!section) throw new Error('no chorus');
      const { chart, score } = section;
      chart.bars.forEach((bar, i) => {
        const walking = score.events.filter(
          ({ part, at }) => part === 'bass' && at > bar.at && at < bar.at + bar.length,
        );
        const turn = bandTurn(program.plan, chorus, i, chart.bars.length);
        expect([chorus, i, turn]).toEqual([chorus, i, walking.length === 0 ? 'drums' : 'band']);
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
        expect(bandTurn(program.plan, chorus, i, 12) === 'silent').toBe(!heard);
      });
    }
  });
});
