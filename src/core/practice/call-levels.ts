import type { Harp, Sound } from '../harp/harp';
import { isInReach, NATURAL_NOTES, type TechniqueChoice } from '../harp/reach';

/** How much a call asks for, from two or three notes to lines that move through the chord. */
export const CALL_LEVELS = [1, 2, 3] as const;
export type CallLevel = (typeof CALL_LEVELS)[number];

/** What a level is, in the player's words. */
export const LEVEL_WORDS: Readonly<Record<CallLevel, string>> = {
  1: 'First: two or three natural notes',
  2: 'Second: chord tones, two bars',
  3: 'Third: lines that land on thirds and sevenths',
};

/** What calls of a level are made of. Echo games begin with two or three notes, then four to six (common practice, no source). */
export interface LevelShape {
  /** Notes a bar at most, longer ones in place of the others. */
  readonly mostNotes: number;
  /** Different keys at most; null as many as come. */
  readonly mostKeys: number | null;
  /** Semitones from the lowest to the highest note. */
  readonly range: number;
  /** Whether short notes between may be neighbours that lead on to a chord tone. */
  readonly passing: boolean;
}

export const LEVEL_SHAPES: Readonly<Record<CallLevel, LevelShape>> = {
  1: { mostNotes: 3, mostKeys: 3, range: 9, passing: false },
  2: { mostNotes: 5, mostKeys: null, range: 14, passing: false },
  3: { mostNotes: 8, mostKeys: null, range: 16, passing: true },
};

/** The sounds that calls of a level use of what is in reach: the first natural notes alone, the second no overbends. */
export const soundsFor = (harp: Harp, technique: TechniqueChoice, level: CallLevel): readonly Sound[] => {
  const own: TechniqueChoice =
    level === 1
      ? { ...NATURAL_NOTES, off: technique.off }
      : level === 2
        ? { ...technique, overbends: false }
        : technique;
  return harp.sounds.filter((sound) => isInReach(sound, own));
};
