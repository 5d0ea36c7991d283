import type { Section } from '../arranger/program';
import type { Bpm } from '../theory/units';
import type { Tune } from './tune';

/** One bar with all that is shown of it. */
export interface BarView {
  /** The music it belongs to: the chart in this chorus's key, with its harp and fit. */
  readonly tune: Tune;
  /** Index into `tune.chart.bars`. */
  readonly bar: number;
  /** Its place in the whole chorus; `null` in intros and endings. */
  readonly formBar: number | null;
  /** `rest` while nothing is heard: the bar at the cursor. */
  readonly kind: Section['kind'] | 'rest';
  readonly chorus: number;
  /** The tempo this bar is heard at; `null` at rest. */
  readonly tempo: Bpm | null;
}

/** The bar being heard and the one after it. */
export interface ShownBars {
  /** The bar being heard, or, while stopped, the bar at the cursor. */
  readonly now: BarView;
  /** The bar after it; `null` after the last. */
  readonly next: BarView | null;
}
