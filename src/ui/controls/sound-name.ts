import type { MarkedSound } from '../../core/fit/mark-sounds';
import type { NoteName } from '../../core/theory/chord';
import { withoutDoubleAccidental } from '../../core/theory/pitch';
import { plainName } from '../../core/theory/spelling';

/**
 * What a sound is called on the map: a chord tone as the chord spells it, as in every other place; a tone of the scale
 * beneath as the scale does, but without double accidentals; anything else plainly.
 */
export const soundName = ({ sound, chordTone, scaleTone }: MarkedSound, tonic: NoteName): NoteName => {
  if (chordTone !== null) return chordTone.name;
  return scaleTone === null ? plainName(sound.pitch, tonic) : withoutDoubleAccidental(scaleTone.name);
};
