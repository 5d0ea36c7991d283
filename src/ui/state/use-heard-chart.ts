import { useMemo } from 'react';
import type { Chart } from '../../core/chart/chart';
import { heardChart } from '../../core/song/heard-chart';
import { useSelected } from './session-context';

/** The chart of the chorus being heard, whole: in its key, with its own turnaround. */
export const useHeardChart = (): Chart => {
  const form = useSelected((state) => state.form);
  const exercise = useSelected((state) => state.exercise);
  const heard = useSelected((state) => state.now.tune.chart);
  const kind = useSelected((state) => state.now.kind);
  const from = useSelected((state) => (state.now.formBar ?? 0) - state.now.bar);
  return useMemo(() => {
    if (exercise !== null) return exercise.chart;
    return kind === 'chorus' ? heardChart(form, heard, from) : form;
  }, [exercise, form, heard, kind, from]);
};
