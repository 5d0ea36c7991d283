import { soundHz } from '../../core/harp/intonation';
import type { HeardNote } from '../../core/hearing/heard-note';
import { centsBetween } from '../../core/theory/temperament';
import { asHz, type Hz } from '../../core/theory/units';

/** A pitch further off than this is the next note, of which no more is known yet. Cents. */
const FARTHEST = 120;

/**
 * Cents to be written beside the reed that is lit, while a pitch (Hz; 0 for none) is heard: null where several holes
 * sound, which have none in common. Throws RangeError on a reference outside 440–446 Hz.
 */
export const offsetOf = (note: HeardNote, frequency: number, reference: Hz): number | null => {
  if (note.sound === null || note.together.length > 0) return null;
  const live =
    frequency > 0 && note.to === null
      ? centsBetween(soundHz(note.sound, reference), asHz(frequency))
      : Number.POSITIVE_INFINITY;
  return Math.abs(live) > FARTHEST ? note.offset : live;
};
