import type { ChartsState } from '../charts/charts-state';
import type { ExportState } from '../export/export-state';
import type { KeepingState } from '../keeping/keeping-state';
import type { OfflineState } from '../offline/newer-version-state';
import type { SongState } from '../song/song-state';
import type { SoundFontState } from '../soundfont/soundfont-state';
import type { StageState } from '../stage/stage-state';
import type { WarmingUp } from '../warm-up/warm-up-state';

/** The state of the page: one slice a feature. */
export type SessionState = SongState &
  KeepingState &
  ChartsState &
  SoundFontState &
  ExportState &
  WarmingUp &
  StageState &
  OfflineState;
