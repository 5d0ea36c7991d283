import type { Peak } from './lag-peaks';
import type { PitchEvidence } from './pitch-evidence';

/** Likeness above which the window grows in any case, and how much it may lose by growing otherwise. */
const STEADY = 0.8;
const LOSS = 0.02;

/** The period in a window that grows while the pitch stays, and shrinks while it moves. */
export interface PitchWindow {
  /** The period near a place of the grid; `same` where the pitch goes on from the hop before. */
  periodAt(place: number, same: boolean): Peak;
  /** Hops of the window that was read last. */
  length(): number;
}

/** Reads periods from evidence, in windows between a shortest and a longest number of hops. */
export const createPitchWindow = (
  evidence: PitchEvidence,
  { shortest, longest }: { readonly shortest: number; readonly longest: number },
): PitchWindow => {
  let length = shortest;
  return {
    periodAt(place, same) {
      length = same ? Math.min(longest, length + 1) : shortest;
      const likeness = evidence.likenessAt(place);
      let period = evidence.periodAt(place, length);
      while (length > shortest && period.height < Math.min(STEADY, likeness - LOSS)) {
        length = Math.max(shortest, length >> 1);
        period = evidence.periodAt(place, length);
      }
      return period;
    },
    length: () => length,
  };
};
