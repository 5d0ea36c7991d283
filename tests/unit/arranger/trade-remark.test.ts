import { expect, it } from 'vitest';
import type { Plan } from '../../../src/core/arranger/program';
import { tradeRemark } from '../../../src/core/arranger/trade-remark';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { testPlan } from '../../helpers/test-charts';

const remark = (bars: number, plan: Partial<Plan>): string | undefined => {
  const text = Array.from({ length: bars }, () => 'G7').join(' | ');
  const { chart } = readChart(text, { tonic: 'G', mode: 'major', meter: '4/4', title: 'Typed' });
  return tradeRemark(testPlan(plan), chart ?? expect.fail());
};

// The turns are those of `tradeTurns`, whose test has them bar by bar.
it.each([
  [12, 'trade fours', /second chorus on\.$/],
  [10, 'trade fours', /last turn of a chorus has 2 bars\.$/],
  [9, 'trade fours', /last turn of a chorus has 5 bars\.$/],
  [5, 'trade twos', /last turn of a chorus has 3 bars\.$/],
  [11, 'trade twos', /last turn of a chorus has 3 bars\.$/],
  [10, 'trade twos', /second chorus on\.$/],
] as const)('says what becomes of %i bars: %s', (bars, arc, said) => {
  expect(remark(bars, { arc })).toMatch(said);
});

it('says nothing where nobody trades, and that two choruses are too few', () => {
  expect(remark(10, { arc: 'steady' })).toBeUndefined();
  expect(remark(10, { arc: 'trade fours', sounding: 'drums' })).toBeUndefined();
  expect(remark(10, { arc: 'trade fours', choruses: 2 })).toMatch(/three or more/);
  expect(remark(10, { arc: 'trade fours', choruses: 3 })).toMatch(/2 bars/);
});
