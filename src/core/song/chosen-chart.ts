import type { Chart, MeterName } from '../chart/chart';
import { type OwnChart, ownChartInKey } from '../chart-text/own-chart';
import type { PitchClass } from '../theory/units';
import { type ChartChoices, formChart, formOf, meterFor, songKeyOf } from './tune';

/** Charts read once: every change of a setting asks for the chart again, some for all twelve keys. */
const played = new WeakMap<OwnChart, Map<string, Chart>>();

const playedChart = (own: OwnChart, key: PitchClass, meter: MeterName): Chart => {
  const known = played.get(own) ?? new Map<string, Chart>();
  played.set(own, known);
  const id = `${key} ${meter}`;
  const chart = known.get(id) ?? ownChartInKey(own, key, meter);
  known.set(id, chart);
  return chart;
};

/**
 * The chosen form in a key (the song's own unless another is given), with its turnaround where all choruses have one.
 * A chart of the player's own stays as it was typed.
 */
export const chartFor = (
  settings: ChartChoices,
  ownCharts: readonly OwnChart[],
  key: PitchClass = songKeyOf(settings),
): Chart => {
  const form = formOf(settings, ownCharts);
  return typeof form === 'string'
    ? formChart(settings, form, key)
    : playedChart(form, key, meterFor(settings));
};
