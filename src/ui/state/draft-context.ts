import { useMemo } from 'react';
import type { OwnChart } from '../../core/chart-text/own-chart';
import { type ListedChart, listCharts, openDraft } from '../../core/song/chart-drafts';
import type { History } from '../../core/song/history';
import { useSelected } from './session-context';

/** The player’s charts as the page shows them. */
export interface ShownCharts {
  readonly draft: History<OwnChart> | null;
  readonly listed: readonly ListedChart[];
  /** Stays the same while one text is written, whatever chart it becomes. */
  readonly editing: string | null;
}

/** The open chart and the list of all. */
export const useCharts = (): ShownCharts => {
  const chartDrafts = useSelected((state) => state.chartDrafts);
  const ownCharts = useSelected((state) => state.ownCharts);
  return useMemo(() => {
    const view = { chartDrafts, ownCharts };
    const { open, splitFrom } = chartDrafts;
    const editing = open === null ? null : (splitFrom[open] ?? open);
    return { draft: openDraft(view), listed: listCharts(view), editing };
  }, [chartDrafts, ownCharts]);
};
