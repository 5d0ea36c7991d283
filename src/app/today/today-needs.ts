import type { BendCommands } from '../bends/bends-feature';
import type { BendsState } from '../bends/bends-state';
import type { BookState } from '../book/book-state';
import type { SetRunCommands } from '../book/set-run';
import type { ChorusesState } from '../choruses/choruses-state';
import type { EarState } from '../ear/ear-state';
import type { LibraryCommands, PhrasesState } from '../phrases/phrases-state';
import type { Stand } from '../song/feature';
import type { Song } from '../song/song-state';
import type { WarmUpCommands } from '../warm-up/warm-up-run';
import type { WarmingUp } from '../warm-up/warm-up-state';
import type { TodayState } from './today-state';

/** What of the page's state today reads. */
export type TodayReads = Song & BookState & BendsState & PhrasesState & EarState & ChorusesState & WarmingUp;

/** What today asks of other features: each step is practised where it would be by hand. */
export type TodayAsks = WarmUpCommands &
  BendCommands &
  Pick<SetRunCommands, 'openSong'> &
  Pick<LibraryCommands, 'callWith'>;

/** The stand, as today finds it. */
export type TodayStand = Stand<TodayState & TodayReads, TodayAsks>;
