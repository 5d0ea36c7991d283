import { createReedProfiles } from '../core/grips/reed-profiles';
import { hearRecording } from '../core/hearing/hear-recording';
import type { HeardNote } from '../core/hearing/heard-note';
import type { EarChoice } from './microphone';

/** A recording and what to listen for in it. */
export interface Recording {
  /** Mono. */
  readonly samples: Float32Array;
  /** What the band sent at the same moments; absent where there was none, or nothing is known of it. */
  readonly sent?: Float32Array;
  readonly sampleRate: number;
  readonly choice: EarChoice;
}

/** Hears a whole recording, and tells how much of it is done (0 to 1) and which notes have ended since. */
export const hearThrough = (
  { samples, sent, sampleRate, choice }: Recording,
  tell: (share: number, notes: readonly HeardNote[]) => void,
): void => {
  const profiles = createReedProfiles(choice.harp, choice.reference, choice.reeds?.known);
  hearRecording({ samples, ...(sent && { sent }) }, { ...choice, profiles, sampleRate }, tell);
};
