import type { Playhead } from '../arranger/playhead';
import type { HeardNote } from '../hearing/heard-note';
import type { Seconds } from '../theory/units';

/** A note of a take that has ended. */
export type EndedNote = HeardNote & { readonly to: Seconds };

/** A note of a take and where in the music it began. Times are seconds of the take. */
export interface TakeNote {
  readonly note: EndedNote;
  /** Null where the band did not play. */
  readonly playhead: Playhead | null;
}
