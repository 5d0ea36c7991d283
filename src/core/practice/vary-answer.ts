import type { Bar } from '../chart/chart';
import { chordAt } from '../chart/chord-at';
import type { Harp, Sound } from '../harp/harp';
import { isInReach, type TechniqueChoice } from '../harp/reach';
import { soundId } from '../harp/tab';
import { type Phrase, type PhraseNote, phraseSound } from '../phrase/phrase';
import { pick, type Random } from '../theory/random';
import { asPitchClass } from '../theory/units';

/** Where a varied answer is to fit. */
export interface VaryPlace {
  /** The bars it sounds over. */
  readonly bars: readonly Bar[];
  readonly harp: Harp;
  readonly technique: TechniqueChoice;
  readonly random: Random;
}

/** Notes at the end that are said another way: as teachers vary a phrase (common practice, no source). */
const VARIED = 2;

/** Chord tones in reach, the nearest to a sound first, without itself. */
const near = (from: Sound, at: number, { bars, harp, technique }: VaryPlace): readonly Sound[] => {
  const tones =
    chordAt(
      bars.flatMap(({ chords }) => chords),
      at,
    )?.chord.tones ?? [];
  return harp.sounds
    .filter((sound) => isInReach(sound, technique) && soundId(sound) !== soundId(from))
    .filter(({ pitch }) => tones.some(({ pitchClass }) => pitchClass === asPitchClass(Math.round(pitch))))
    .toSorted((a, b) => Math.abs(a.pitch - from.pitch) - Math.abs(b.pitch - from.pitch));
};

/** The phrase as a partner says it back: the same but for its last notes, which go to other tones of the chord. */
export const varyAnswer = (phrase: Phrase, place: VaryPlace): Phrase => {
  const { bars, harp, random } = place;
  const start = bars[0]?.at ?? 0;
  const sounds = new Map(harp.sounds.map((sound) => [soundId(sound), sound]));
  const from = Math.max(1, phrase.notes.length - VARIED);
  const notes = phrase.notes.map((note, i): PhraseNote => {
    const [asked] = note.sounds;
    const sound = asked === undefined ? undefined : sounds.get(soundId(asked));
    if (i < from || sound === undefined) return note;
    const choices = near(sound, start + note.at, place).slice(0, 2);
    return choices.length === 0 ? note : { ...note, sounds: [phraseSound(pick(random, choices))] };
  });
  return { ...phrase, notes };
};
