import type { Exercise } from '../../core/bends/bend-exercise';
import type { BendResults, Standing } from '../../core/bends/bend-results';
import type { BendVerdict } from '../../core/bends/bend-verdict';
import type { Sound } from '../../core/harp/harp';
import type { EarState } from '../ear/ear-state';
import type { Song } from '../song/song-state';

/** A run of turns at one sound. */
export interface BendTurn {
  readonly target: Sound;
  readonly exercise: Exercise;
  /** The sounds are given, turn by turn; otherwise it stays with this one. */
  readonly given: boolean;
  /** The lead is heard; the player plays, and is heard or marks it; the verdict stands. */
  readonly step: 'lead' | 'yours' | 'mark' | 'verdict';
  /** Of the try before; null before the first, and where the player marked it. */
  readonly verdict: BendVerdict | null;
}

/** Bend practice, as the page shows it. */
export interface BendsState {
  readonly bends: {
    /** Everything kept; empty until it was fetched. */
    readonly results: readonly BendResults[];
    readonly turn: BendTurn | null;
    /** Why the last run ended by itself; empty where it did not. */
    readonly ended: string;
    /** How far the player has come with sounds of the harp in hand; null where results are not to be shown. */
    readonly standings: ReadonlyMap<string, Standing> | null;
  };
}

/** What of the page's state bend practice reads. */
export type BendReads = BendsState & EarState & Song;

/** Before anybody has practised. */
export const NO_BENDS: BendsState['bends'] = { results: [], turn: null, ended: '', standings: null };
