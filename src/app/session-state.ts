import type { BandStatus } from '../audio/band';
import type { Section } from '../core/arranger/program';
import type { OwnChart } from '../core/chart/own-chart';
import type { Tuning } from '../core/harp/harp';
import type { OwnedHarp } from '../core/harp/harp-case';
import type { Settings } from '../core/settings/settings';
import type { Bpm } from '../core/theory/units';
import type { NewerVersionState } from './newer-version-state';
import type { ChartDesk } from './own-charts-desk';
import type { OwnSoundsState } from './own-sounds-state';
import type { TakeAwayState } from './take-away-state';
import type { Tune } from './tune';
import type { WarmUpState } from './warm-up-state';

/** A sentence for the player: something to know, or trouble that something can be done about. */
export interface Notice {
  readonly id: string;
  readonly tone: 'note' | 'trouble';
  readonly text: string;
}

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

/** Things the player made or owns, as the page shows them. */
export interface Shelved {
  readonly harpCase: readonly OwnedHarp[];
  readonly ownTunings: readonly Tuning[];
  readonly ownCharts: readonly OwnChart[];
}

export interface SessionState extends Shelved {
  readonly settings: Settings;
  /** The song as chosen, in its own key. */
  readonly tune: Tune;
  readonly status: BandStatus;
  /** Where Play starts, as a bar of the form. */
  readonly cursor: number;
  /** The bar being heard, or, while stopped, the bar at the cursor. */
  readonly now: BarView;
  /** The bar after it; `null` after the last. */
  readonly next: BarView | null;
  /** The chorus the player asked to be the last, from 0; `null` when the plan decides. */
  readonly lastChorus: number | null;
  /** Where the warm-up is; `null` when none runs. */
  readonly warmUp: WarmUpState | null;
  /** What the warm-up plays in place of the song. */
  readonly exercise: Tune | null;
  readonly takeAway: TakeAwayState;
  readonly ownSounds: OwnSoundsState;
  readonly offline: NewerVersionState;
  readonly notices: readonly Notice[];
  /** Where the player's charts are written. */
  readonly chartDesk: ChartDesk;
}
