import type { Harp, Sound } from '../harp/harp';
import { isInReach, type TechniqueChoice } from '../harp/reach';
import type { Chord, ChordTone, NoteName } from '../theory/chord';
import { tonesWithBass } from '../theory/chords';
import { blueNotes, type Scale } from '../theory/scales';
import { asPitchClass } from '../theory/units';

/** Everything a sound is over one chord, as the harp map shows it; a fit takes what comes first of it. */
export interface MarkedSound {
  readonly sound: Sound;
  /** The chord tone it gives, or null. */
  readonly chordTone: ChordTone | null;
  /** The tone of the scale layer it gives, or null. */
  readonly scaleTone: ChordTone | null;
  /** The blue note of the key it gives (its flattened third, fifth or seventh), or null. */
  readonly blueTone: ChordTone | null;
  readonly inReach: boolean;
}

/** What sounds are marked by. */
export interface Marking {
  readonly harp: Harp;
  /** A chord, whose slash bass counts with it, or bare tones. */
  readonly chord: Chord | { readonly tones: readonly ChordTone[] };
  /** The key's spelled tonic. */
  readonly tonic: NoteName;
  /** The second layer; null shows chord tones alone. */
  readonly scale: Scale | null;
  readonly technique: TechniqueChoice;
}

/** Every sound of the harp with what it is in the chord and in the scale layer, lowest first. */
export const markSounds = ({ harp, chord, tonic, scale, technique }: Marking): readonly MarkedSound[] => {
  const blue = blueNotes(tonic);
  const toneAt = (tones: readonly ChordTone[], sound: Sound): ChordTone | null =>
    tones.find(({ pitchClass }) => pitchClass === asPitchClass(sound.pitch)) ?? null;
  const wanted = 'symbol' in chord ? tonesWithBass(chord) : chord.tones;
  return harp.sounds.map((sound) => ({
    sound,
    chordTone: toneAt(wanted, sound),
    scaleTone: scale === null ? null : toneAt(scale.tones, sound),
    blueTone: toneAt(blue, sound),
    inReach: isInReach(sound, technique),
  }));
};
