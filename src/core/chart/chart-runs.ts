import type { Chart, ChordSpan } from './chart';

/** Bars in a row that a reader takes in as one: the same chord held over all of them, or the band resting in all. */
export interface ChartRun {
  /** Index of its first bar. */
  readonly from: number;
  readonly bars: number;
  /** The chords of each of its bars: several only where the run is one bar long. */
  readonly chords: readonly ChordSpan[];
}

/**
 * A chart as runs of bars that hold one chord. @param line bars after which a run ends at the latest, so that the lines
 * of a form stay apart; none keeps whole stretches together, as in a drill over one chord.
 */
export const chartRuns = ({ bars }: Pick<Chart, 'bars'>, line?: number): readonly ChartRun[] => {
  const runs: ChartRun[] = [];
  for (const [i, { chords }] of bars.entries()) {
    const before = runs.at(-1);
    const sameLine = line === undefined || i % line !== 0;
    const [only] = chords;
    const held =
      chords.length === 1 &&
      before?.chords.length === 1 &&
      only?.chord.symbol === before.chords[0]?.chord.symbol &&
      only?.band !== 'stop' &&
      only?.band === before.chords[0]?.band;
    if (before !== undefined && held && sameLine)
      runs[runs.length - 1] = { ...before, bars: before.bars + 1 };
    else runs.push({ from: i, bars: 1, chords });
  }
  return runs;
};

/** Whether a chart is read sooner as its chords with their lengths than bar by bar. */
export const isDrill = (chart: Chart): boolean => chartRuns(chart).length * 2 <= chart.bars.length;
