import { bench, describe } from 'vitest';
import type { Program } from '../../src/core/arranger/program';
import { sectionAt } from '../../src/core/arranger/section-at';
import type { Chart } from '../../src/core/chart/chart';
import { readChart } from '../../src/core/chart-text/read-chart';
import { FEEL_IDS } from '../../src/core/feels/feels';
import { BAND_FIGURES_HEAD, bandFigures, bandFiguresLine } from '../helpers/band-figures';
import { measured } from '../helpers/bench-depth';
import { FIGURES_HEAD, figuresLine, measureFeel } from '../helpers/measure-score';
import { testChart, testProgram } from '../helpers/test-charts';

const seeds = measured([1, 2, 3], [1]);
const lines = FEEL_IDS.flatMap((feel) => seeds.map((seed) => figuresLine(measureFeel(feel, seed))));
process.stdout.write(`\n${[FIGURES_HEAD, ...lines].join('\n')}\n\n`);

const band = FEEL_IDS.flatMap((feel) => seeds.map((seed) => bandFiguresLine(bandFigures(feel, seed))));
process.stdout.write(`${[BAND_FIGURES_HEAD, ...band].join('\n')}\n\n`);

describe('score of twelve choruses', () => {
  for (const feel of FEEL_IDS) {
    const program = testProgram(feel, { plan: { arc: 'breathe' } });
    bench(feel, () => {
      for (let chorus = 0; chorus < 12; chorus += 1) sectionAt(program, chorus);
    });
  }
});

describe('one chorus, the longest and the most moving', () => {
  const long = testProgram('shuffle', { chart: testChart('twenty-four') });
  const jazz = testProgram('swing', { chart: testChart('jazz-bebop') });
  const moving = testProgram('swing', {
    chart: testChart('jazz-bebop'),
    plan: { keys: { kind: 'fourths' } },
  });
  bench('twenty-four bars', () => {
    sectionAt(long, 3);
  });
  bench('bebop changes', () => {
    sectionAt(jazz, 3);
  });
  bench('bebop changes in another key', () => {
    sectionAt(moving, 3);
  });
});

/** A chart of so many bars, as the longest that can be typed. */
const longChart = (bars: number): Chart => {
  const line = ['C7', 'F7', 'C7', 'C7', 'F7', 'F7', 'C7', 'A7', 'Dm7', 'G7', 'C7', 'G7'];
  const text = Array.from({ length: bars }, (_, bar) => line[bar % line.length]).join(' | ');
  const { chart } = readChart(`| ${text} |`, { tonic: 'C', mode: 'major', meter: '4/4', title: 'Long' });
  if (chart?.bars.length !== bars) throw new Error(`No chart of ${bars} bars`);
  return chart;
};

/** Bars of the curve: what a chorus costs grows with them, and no faster. */
const LENGTHS = [12, 60, 132, 252];

const millisecondsOf = (program: Program): number => {
  const rounds = measured(20, 3);
  for (let chorus = 1; chorus < 4; chorus += 1) sectionAt(program, chorus);
  const { user } = process.cpuUsage();
  for (let chorus = 0; chorus < rounds; chorus += 1) sectionAt(program, 1 + (chorus % 6));
  return (process.cpuUsage().user - user) / 1000 / rounds;
};

for (const feel of ['shuffle', 'swing'] as const) {
  const figures = LENGTHS.map((bars) => {
    const cost = millisecondsOf(testProgram(feel, { chart: longChart(bars) }));
    return `${bars} bars ${cost.toFixed(1)} ms (${((1000 * cost) / bars).toFixed(0)} µs a bar)`;
  });
  process.stdout.write(`one chorus, ${feel}: ${figures.join(', ')}\n`);
}
