import { expect, it } from 'vitest';
import { heardChart } from '../../../src/core/song/heard-chart';
import { sectionOf } from '../../helpers/score-events';
import { testChart, testProgram } from '../../helpers/test-charts';

const roots = (chart: ReturnType<typeof testChart>): string =>
  chart.bars.map(({ chords }) => chords.map(({ chord }) => chord.symbol).join(' ')).join(' | ');

it('the chart shown is the chorus heard: its own turnaround, the form before the bar it was entered at', () => {
  const form = testChart();
  const program = testProgram('swing', { plan: { turnarounds: 'varied' } });
  const whole = sectionOf(program, 1).chart;
  expect(roots(whole)).not.toBe(roots(form));
  expect(roots(heardChart(form, whole, 0))).toBe(roots(whole));
  const late = sectionOf(program, 1, 5).chart;
  const shown = heardChart(form, late, 5);
  expect(roots(shown)).toBe(roots(whole));
  expect(shown.length).toBe(form.length);
});

it('bars of another key are not mixed into a form', () => {
  const form = testChart();
  expect(heardChart(form, testChart('standard', 2), 0)).toBe(form);
});
