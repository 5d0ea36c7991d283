import type { Chart } from '../../core/chart/chart';
import { pickUpText } from '../../core/song/pick-up-text';
import { useNames } from '../state/use-names';

/** What leads into the first bar of a chart. */
export const PickUp = ({ chart }: { readonly chart: Chart }) => {
  const text = pickUpText(chart, useNames(chart.tonic));
  return text === null ? null : <p className="pick-up">{text}</p>;
};
