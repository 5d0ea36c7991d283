import type { LogEntry } from '../../core/log/log-entry';
import type { BendsState } from '../bends/bends-state';
import type { BookState } from '../book/book-state';
import type { ChartsState } from '../charts/charts-state';
import type { ChorusesState } from '../choruses/choruses-state';
import type { EarState } from '../ear/ear-state';
import type { PhrasesState } from '../phrases/phrases-state';
import type { Stand } from '../song/feature';
import type { Song } from '../song/song-state';
import type { WarmingUp } from '../warm-up/warm-up-state';

/** The log, as the page shows it. */
export interface LogState {
  readonly log: {
    /** Every entry, oldest first; empty until they were read. */
    readonly entries: readonly LogEntry[];
    /** Entries deleted last, so that they can be brought back. */
    readonly dropped: readonly LogEntry[];
    /** The day by the player's own calendar when it was last asked for: `2026-11-25`; empty before. */
    readonly today: string;
  };
}

/** A log before it is read. */
export const NO_LOG: LogState['log'] = { entries: [], dropped: [], today: '' };

/** What of the page's state the log reads. */
export type LogReads = Song &
  BookState &
  Pick<ChartsState, 'ownCharts'> &
  EarState &
  BendsState &
  PhrasesState &
  ChorusesState &
  WarmingUp;

/** The stand, as the log finds it. */
export type LogStand = Stand<LogState & LogReads>;
