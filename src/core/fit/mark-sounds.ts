import type { Harp, Sound } from '../harp/harp';
import { isInReach, type TechniqueChoice } from '../harp/reach';
import type { Chord, ChordTone, NoteName } from '../theory/chord';
import { blueNotes, type Scale } from '../theory/scales';
import { asPitchClass } from '../theory/units';

/** A sound as the harp map shows it over one chord. */
export interface MarkedSound {
  readonly sound: Sound;
  /** The chord tone it gives, or null. */
  readonly chordTone: ChordTone | null;
  /** The tone of the scale layer it gives, or null. */
  readonly scaleTone: ChordTone | null;
  /** Whether it is a blue note of the key: its flattened third, fifth or seventh. */
  readonly blue: boolean;
  readonly inReach: boolean;
}

interface Marking {
  readonly harp: Harp;
  readonly chord: Pick<Chord, 'tones'>;
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
  return harp.sounds.map((sound) => ({
    sound,
    chordTone: toneAt(chord.tones, sound),
    scaleTone: scale === null ? null : toneAt(scale.tones, sound),
    blue: toneAt(blue, sound) !== null,
    inReach: isInReach(sound, technique),
  }));
};
