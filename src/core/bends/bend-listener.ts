import type { PitchFrame } from '../hearing/pitch-frame';
import { centsBetween } from '../theory/temperament';
import { asHz } from '../theory/units';
import type { BendTask } from './bend-exercise';
import { type BendVerdict, judgeBend } from './bend-verdict';
import type { PitchMoment } from './plateaus';

/** Listens for one try. */
export interface BendListener {
  /** Takes frames in the order of time; the verdict once the try is over, else null. */
  take(frames: readonly PitchFrame[]): BendVerdict | null;
}

/**
 * What sounds when the turn begins is left over, and is let pass until it has been quiet for `before`; a try is over
 * when it has been quiet for `after`, longer than a tongue takes to begin again, or at the end of a long breath.
 * Seconds (by design, no source).
 */
const QUIET = { before: 0.1, after: 0.3, breath: 10 } as const;

/** A listener for the next try at a task. */
export const createBendListener = (task: BendTask): BendListener => {
  let moments: PitchMoment[] = [];
  let quietSince: number | null = null;
  let armed = false;

  const end = (): BendVerdict | null => {
    const verdict = judgeBend(task, moments);
    moments = [];
    return verdict.kind === 'nothing' ? null : verdict;
  };
  const takeFrame = ({ known, centre, frequency }: PitchFrame): BendVerdict | null => {
    if (frequency > 0) {
      quietSince = null;
      if (armed) moments.push({ time: centre, cents: centsBetween(task.hz, asHz(frequency)) });
      const begun = moments[0]?.time ?? centre;
      return centre - begun > QUIET.breath ? end() : null;
    }
    quietSince ??= known;
    const quiet = known - quietSince;
    armed ||= quiet >= QUIET.before;
    return moments.length > 0 && quiet >= QUIET.after ? end() : null;
  };
  return {
    take: (frames) => {
      let verdict: BendVerdict | null = null;
      for (const frame of frames) verdict ??= takeFrame(frame);
      return verdict;
    },
  };
};
