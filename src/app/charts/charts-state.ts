import type { OwnChart } from '../../core/chart-text/own-chart';
import { type ChartDrafts, NO_DRAFTS } from '../../core/song/drafts';

/** The player's charts. */
export interface ChartsState {
  /** Those that are saved. */
  readonly ownCharts: readonly OwnChart[];
  /** Where they are written. */
  readonly chartDrafts: ChartDrafts;
}

/** Before any is read. */
export const NO_CHARTS: ChartsState = { ownCharts: [], chartDrafts: NO_DRAFTS };
