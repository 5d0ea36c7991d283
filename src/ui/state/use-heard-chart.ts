import { useMemo } from 'react';
import type { Chart } from '../../core/chart/chart';
import { heardChart } from '../../core/song/heard-chart';
import { chartFor } from '../../core/song/tune';
import { useSelected } from './session-context';

/** The chart of the chorus being heard, whole: in its key, with its own turnaround. */
export const useHeardChart = (): Chart => {
  const settings = useSelected((state) => state.settings);
  const ownCharts = useSelected((state) => state.ownCharts);
  const exercise = useSelected((state) => state.exercise);
  const own = useSelected((state) => state.tune.chart);
  const heard = useSelected((state) => state.now.tune.chart);
  const kind = useSelected((state) => state.now.kind);
  const from = useSelected((state) => (state.now.formBar ?? 0) - state.now.bar);
  return useMemo(() => {
    if (exercise !== null) return exercise.chart;
    const form = heard.key === own.key ? own : chartFor(settings, ownCharts, heard.key);
    return kind === 'chorus' ? heardChart(form, heard, from) : form;
  }, [exercise, own, settings, ownCharts, heard, kind, from]);
};
