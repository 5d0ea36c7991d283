import { bench, describe } from 'vitest';
import { sectionAt } from '../../src/core/arranger/section-at';
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
