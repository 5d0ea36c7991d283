import type { KeepingState } from '../keeping/keeping-state';
import type { SongState } from '../song/song-state';
import type { FeatureState } from './features';

/** The state of the page: the song, its keeping, and a slice a feature. */
export type SessionState = SongState & KeepingState & FeatureState;
