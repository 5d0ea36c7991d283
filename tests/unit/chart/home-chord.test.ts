import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { homeChord } from '../../../src/core/chart/home-chord';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { asPitchClass } from '../../../src/core/theory/units';

const typed = (text: string) =>
  readChart(text, { tonic: 'C', mode: 'major', meter: '4/4', title: 'Own' }).chart;

describe('homeChord', () => {
  it.each([
    ['| F7 | Fm7 | C7 | G7 |', 'C7'],
    ['| Dm7 | G7 | C6 | A7 |', 'C6'],
    ['| F7/C | G7 |', 'C7'],
  ])('of %s is %s, wherever the chart begins', (text, symbol) => {
    expect(homeChord(typed(text)).symbol).toBe(symbol);
  });

  it('is the chord a blues begins with', () => {
    expect(homeChord(buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' })).symbol).toBe('G7');
  });
});
