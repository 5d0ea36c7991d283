import type { VoiceNote } from './voice';

/** Throws RangeError unless a pitched voice can compute the note: velocity 1–127, 0 < hz < a third of the rate. */
export const checkNote = ({ hz, velocity, sampleRate }: VoiceNote): void => {
  if (!(velocity >= 1 && velocity <= 127)) throw new RangeError(`velocity must be 1–127, got ${velocity}`);
  if (!(sampleRate >= 8000)) throw new RangeError(`sampleRate must be at least 8000 Hz, got ${sampleRate}`);
  if (!(hz > 0 && hz < sampleRate / 3)) {
    throw new RangeError(`hz must lie between 0 and a third of the rate (${sampleRate / 3}), got ${hz}`);
  }
};
