import type { OwnChart } from '../../core/chart-text/own-chart';
import type { ChartDrafts } from '../../core/song/chart-drafts';

/** The player's charts. */
export interface ChartsState {
  /** Those that are saved. */
  readonly ownCharts: readonly OwnChart[];
  /** Where they are written. */
  readonly chartDrafts: ChartDrafts;
}
