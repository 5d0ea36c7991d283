import type { Harp, Sound } from '../harp/harp';
import type { HarpNote, Phrase } from '../phrase/phrase';
import { placePhrase } from '../phrase/phrase-lead';
import { asTicks } from '../theory/units';

/** A note that is asked for: seconds from the phrase's beginning, keys with fractions for cents. */
export interface AskedNote {
  /** Index into the phrase's notes. */
  readonly index: number;
  readonly at: number;
  readonly length: number;
  /** Where the pitch may settle: one key for a plain note, more for holes together and for a curve. */
  readonly pitches: readonly number[];
  /** What else may sound with it: the other hole of a shake, the holes of a slide, what a curve goes through. */
  readonly passing: readonly number[];
  readonly sound: Sound;
}

/** A note that was heard, in the same units. */
export interface PlayedNote {
  readonly at: number;
  readonly length: number;
  readonly pitch: number;
  /** What most likely sounded, and what has the same pitch; empty where the harp has nothing near. */
  readonly sounds: readonly Sound[];
}

/** Where and how fast a phrase is asked for. */
export interface Asking {
  readonly harp: Harp;
  /** Long : short of the off-beats, as the band plays them. */
  readonly swing: number;
  readonly secondsPerTick: number;
}

const pitchOf = ({ pitch, cents }: Sound): number => pitch + cents / 100;

const pitchesOf = ({ sounds, note: { curve } }: HarpNote): readonly number[] => {
  const [only] = sounds;
  if (curve === undefined || only === undefined) return sounds.map(pitchOf);
  return curve.map((cents) => only.pitch + only.bend - cents / 100);
};

/** The notes of a phrase as they are asked of a player with this harp; what the harp lacks is not asked. */
export const askedNotes = (phrase: Phrase, { harp, swing, secondsPerTick }: Asking): readonly AskedNote[] =>
  placePhrase(phrase, { harp, at: asTicks(0), swing }).map(({ at, length, sound, played }) => ({
    index: phrase.notes.indexOf(played.note),
    at: at * secondsPerTick,
    length: length * secondsPerTick,
    pitches: pitchesOf(played),
    passing: [...played.slide, ...(played.shake === null ? [] : [played.shake])].map(pitchOf),
    sound,
  }));
