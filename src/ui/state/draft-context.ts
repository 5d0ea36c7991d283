import { useMemo } from 'react';
import type { OwnChart } from '../../core/chart-text/own-chart';
import { type ListedChart, listCharts, openDraft } from '../../core/song/chart-drafts';
import type { History } from '../../core/song/history';
import { useSelected } from './session-context';

export interface ShownDesk {
  readonly draft: History<OwnChart> | null;
  readonly listed: readonly ListedChart[];
  /** Stays the same while one text is written, whatever chart it becomes. */
  readonly editing: string | null;
}

/** The chart open on the desk and the list of all. */
export const useDesk = (): ShownDesk => {
  const chartDesk = useSelected((state) => state.chartDesk);
  const ownCharts = useSelected((state) => state.ownCharts);
  return useMemo(() => {
    const view = { chartDesk, ownCharts };
    const { open, splitFrom } = chartDesk;
    const editing = open === null ? null : (splitFrom[open] ?? open);
    return { draft: openDraft(view), listed: listCharts(view), editing };
  }, [chartDesk, ownCharts]);
};
