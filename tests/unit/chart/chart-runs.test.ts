import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { chartRuns } from '../../../src/core/chart/chart-runs';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { heldChords } from '../../../src/core/practice/warm-up-time';
import { chordOf } from '../../../src/core/theory/chords';
import { PITCH_CLASSES } from '../../../src/core/theory/pitch';

const blues = buildChart({ form: 'standard', key: PITCH_CLASSES[7] ?? never(), meter: '4/4' });
function never(): never {
  throw new Error('No such key');
}
const inWords = (line?: number): readonly string[] =>
  chartRuns(blues, line).map(({ from, bars, chords }) => `${from + 1}: ${chords[0]?.chord.symbol} x${bars}`);

describe('runs of bars', () => {
  it('takes a drill over one chord for one run', () => {
    const chord = chordOf({ root: 'G', quality: '7' });
    const drill = heldChords(
      blues,
      'Long tones',
      Array.from({ length: 35 }, () => chord),
    );
    expect(chartRuns(drill)).toEqual([{ from: 0, bars: 35, chords: drill.bars[0]?.chords }]);
  });

  // The twelve-bar form: I I I I, IV IV I I, V IV I I (Wikipedia, "Twelve-bar blues").
  it('keeps the lines of a form apart', () => {
    expect(inWords(4)).toEqual(['1: G7 x4', '5: C7 x2', '7: G7 x2', '9: D7 x1', '10: C7 x1', '11: G7 x2']);
    expect(chartRuns({ bars: [...blues.bars, ...blues.bars] }).map(({ bars }) => bars)).toEqual([
      4, 2, 2, 1, 1, 6, 2, 2, 1, 1, 2,
    ]);
  });

  it('keeps bars apart in which the band rests or strikes once', () => {
    const text = 'C7 | N.C. | N.C. | C7\nC7 | C7! | C7! | C7';
    const { chart } = readChart(text, { tonic: 'C', mode: 'major', meter: '4/4', title: 'Own' });
    expect(chartRuns(chart, 4).map(({ from, bars }) => `${from + 1} x${bars}`)).toEqual([
      ...['1 x1', '2 x2', '4 x1'],
      ...['5 x1', '6 x1', '7 x1', '8 x1'],
    ]);
  });

  it('covers every bar of every form once, in order', () => {
    for (const form of FORM_IDS) {
      const chart = buildChart({ form, key: PITCH_CLASSES[0] ?? never(), meter: '4/4' });
      const runs = chartRuns(chart, 4);
      expect(runs.flatMap(({ from, bars }) => Array.from({ length: bars }, (_, i) => from + i))).toEqual(
        chart.bars.map((_, i) => i),
      );
    }
  });
});
