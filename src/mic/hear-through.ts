import { createEar } from '../core/hearing/ear';
import type { HeardNote } from '../core/hearing/heard-note';
import type { EarChoice } from './microphone';

/** A recording and what to listen for in it. */
export interface Recording {
  /** Mono. */
  readonly samples: Float32Array;
  readonly sampleRate: number;
  readonly choice: EarChoice;
}

/** Seconds heard between two words about how far it has come. */
const STRETCH = 2;

/** Hears a whole recording, and tells how much of it is done (0 to 1) and which notes have ended since. */
export const hearThrough = (
  { samples, sampleRate, choice }: Recording,
  tell: (share: number, notes: readonly HeardNote[]) => void,
): void => {
  const ear = createEar({ ...choice, sampleRate });
  const size = Math.round(STRETCH * sampleRate);
  for (let from = 0; from < samples.length; from += size) {
    const { notes } = ear.push(samples.subarray(from, from + size));
    tell(
      Math.min(0.99, (from + size) / samples.length),
      notes.filter(({ to }) => to !== null),
    );
  }
  tell(1, ear.end());
};
