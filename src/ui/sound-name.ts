import type { MarkedSound } from '../core/harp/mark-sounds';
import type { NoteName } from '../core/theory/chord';
import { keyName, spellInKey, withoutDoubleAccidental } from '../core/theory/pitch';
import { asPitchClass } from '../core/theory/units';
import { isBlackKey } from './map-layout';

/** A pitch by its plain name: white keys by their letter, black ones by the key's side. */
export const plainName = (pitch: number, tonic: NoteName): NoteName =>
  isBlackKey(pitch) ? spellInKey(asPitchClass(pitch), tonic) : keyName(asPitchClass(pitch), 'major');

/** What a sound is called on the map: as its chord or scale spells it, but never with a double accidental. */
export const soundName = ({ sound, chordTone, scaleTone }: MarkedSound, tonic: NoteName): NoteName => {
  const spelled = chordTone?.name ?? scaleTone?.name;
  return spelled === undefined ? plainName(sound.pitch, tonic) : withoutDoubleAccidental(spelled);
};
