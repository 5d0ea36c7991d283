import type { Chart } from '../chart/chart';
import type { Harp } from '../harp/harp';
import type { TechniqueChoice } from '../harp/reach';
import type { Chord } from '../theory/chord';
import { type FitChord, fitChart } from './fit';

/** What a harp has over one chord, played in a bar of a song: in the key of that bar, whatever the chart has there. */
export const fitAlone = (
  chord: Chord,
  {
    chart,
    harp,
    technique,
  }: { readonly chart: Chart; readonly harp: Harp; readonly technique: TechniqueChoice },
  bar: number,
): FitChord | null => {
  const place = chart.bars[bar];
  if (place === undefined) return null;
  const { at, length } = place;
  const alone: Chart = { ...chart, bars: [{ ...place, chords: [{ chord, at, length }] }] };
  return fitChart({ chart: alone, harp, technique }).bars[0]?.chords[0] ?? null;
};
