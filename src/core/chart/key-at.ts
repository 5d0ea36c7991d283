import { pitchClassOf } from '../theory/pitch';
import type { BarKey, Chart } from './chart';

/** The key in force at a bar: its section's, or else the chart's. */
export const keyAt = ({ bars, tonic, mode }: Chart, bar: number): BarKey => bars[bar]?.key ?? { tonic, mode };

/** The chart as its end sees it: in the key of its last bar, with the bars that are in that key. */
export const inEndKey = (chart: Chart): Chart => {
  const end = chart.bars.at(-1)?.key;
  if (end === undefined) return chart;
  const { tonic, mode } = end;
  const bars = chart.bars.filter(({ key }) => key?.tonic === tonic && key.mode === mode);
  return { ...chart, tonic, mode, key: pitchClassOf(tonic), bars };
};
