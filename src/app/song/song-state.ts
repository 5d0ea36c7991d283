import type { BandStatus } from '../../audio/band/band';
import type { Chart } from '../../core/chart/chart';
import type { ChoiceHistory } from '../../core/settings/choice-steps';
import type { Settings } from '../../core/settings/settings';
import type { ShownBars } from '../../core/song/bar-view';
import type { HeldChoices } from '../../core/song/held-choices';
import type { SongChoice } from '../../core/song/song-program';
import type { Tune } from '../../core/song/tune';

/** Choices that wait for the next chorus. */
export interface Waiting {
  /** The chorus they hold from, from 0; `null` where they wait for the band to stop. */
  readonly from: number | null;
  readonly held: HeldChoices;
  /** All choices as they will be, and the song they make. */
  readonly settings: Settings;
  readonly tune: Tune;
}

/** The song on the stand. */
export interface SongState extends ShownBars {
  /** The chosen form whole, in the key being heard. */
  readonly form: Chart;
  readonly settings: Settings;
  /** The song as chosen, in its own key. */
  readonly tune: Tune;
  readonly status: BandStatus;
  /** Where Play starts, as a bar of the form. */
  readonly cursor: number;
  /** The chorus the player asked to be the last, from 0; `null` when the plan decides. */
  readonly lastChorus: number | null;
  /** Whether all of the band is silent for now; never kept, so that no visit begins in silence. */
  readonly muted: boolean;
  readonly waiting: Waiting | null;
  /** The choices of this visit, for undoing. */
  readonly choices: ChoiceHistory;
  /** What was undone or made again last, in words; empty after the next choice. */
  readonly taken: string;
}

/** The song with what it takes from other features: their charts, their sounds, whether one of them has the band. */
export interface Song extends SongState, SongChoice {
  readonly warmUp: unknown;
}
