import type { BandStatus } from '../../audio/band/band';
import type { Settings } from '../../core/settings/settings';
import type { ShownBars } from '../../core/song/bar-view';
import type { SongChoice } from '../../core/song/song-program';
import type { Tune } from '../../core/song/tune';

/** The song on the stand. */
export interface SongState extends ShownBars {
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
}

/** The song with what it takes from other features: their charts, their sounds, whether one of them has the band. */
export interface Song extends SongState, SongChoice {
  readonly warmUp: unknown;
}
