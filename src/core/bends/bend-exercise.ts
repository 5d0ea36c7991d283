import type { Harp, Sound } from '../harp/harp';
import { soundHz } from '../harp/intonation';
import { centsBetween } from '../theory/temperament';
import { asCents, asPitchClass, type Cents, type Hz, type PitchClass } from '../theory/units';
import type { BendLevel } from './bend-choice';
import { naturalOf } from './bend-targets';

/**
 * What is done with a sound: any dip from the natural note; held; slid into from the natural note; begun bent, out of
 * silence; slid into and out again in one breath.
 */
export const EXERCISES = ['dip', 'hold', 'slide', 'cold', 'in and out'] as const;
export type Exercise = (typeof EXERCISES)[number];

/**
 * Cents either way that are right. No table is published; by what listeners hear: a semitone's half at first, and then
 * around the 25 cents at which sung tones begin to be called out of tune (doi 10.1177/2059204318784582), down to the 10
 * that amateurs can just tell apart (doi 10.1121/1.2697059): finer, nobody hears.
 */
export const TOLERANCE: Readonly<Record<BendLevel, number>> = {
  first: 50,
  developing: 30,
  secure: 20,
  expert: 10,
};

/** The exercises that a sound can be practised with: an overbend has no way in from its natural note. */
export const exercisesFor = ({ technique }: Pick<Sound, 'technique'>): readonly Exercise[] =>
  technique === 'overbend' ? ['hold', 'cold'] : EXERCISES;

/** A degree of the blues that is sung and played between the semitones. */
interface BlueBand {
  readonly name: 'third' | 'fifth' | 'seventh';
  /** Semitones of the degree on a piano. */
  readonly degree: number;
  /** Cents above the tonic, both ends in place. */
  readonly from: number;
  readonly to: number;
}

/**
 * Where blue notes lie, in cents above the tonic: around clusters measured in early vocal recordings (thirds 319, fifths
 * 583, sevenths 969–1038 with the neutral third between 6/5 and 5/4 confirmed; the width of the bands is ours).
 */
const BLUE_BANDS: readonly BlueBand[] = [
  { name: 'third', degree: 3, from: 290, to: 400 },
  { name: 'fifth', degree: 6, from: 560, to: 620 },
  { name: 'seventh', degree: 10, from: 960, to: 1050 },
];

/** The natural note itself is no bend: nearer to it than this nothing counts as blue. Cents. */
const NATURAL = 25;

/** What is asked of the player, with all pitches in cents from the target. */
export interface BendTask {
  readonly target: Sound;
  readonly hz: Hz;
  readonly exercise: Exercise;
  readonly tolerance: Cents;
  /** The sound it starts from; null where the hole has none. */
  readonly natural: Cents | null;
  /** Every sound of the harp. */
  readonly sounds: readonly { readonly sound: Sound; readonly cents: Cents }[];
  /** Where the target is a blue degree of the song, the cents around it that are in place too. */
  readonly blue: { readonly name: BlueBand['name']; readonly from: Cents; readonly to: Cents } | null;
}

interface Asked {
  readonly harp: Harp;
  /** A4 of the harp, Hz. */
  readonly reference: Hz;
  readonly exercise: Exercise;
  readonly level: BendLevel;
  /** Key of the song, for its blue notes; null without one. */
  readonly tonic: PitchClass | null;
}

const blueAround = (target: Sound, tonic: PitchClass, natural: Cents | null): BendTask['blue'] => {
  const degree = asPitchClass(Math.round(target.pitch) - tonic);
  const band = BLUE_BANDS.find((each) => each.degree === degree);
  if (band === undefined) return null;
  const above = 100 * degree;
  const top = band.to - above;
  return {
    name: band.name,
    from: asCents(band.from - above),
    to: asCents(natural === null || natural < 0 ? top : Math.min(top, natural - NATURAL)),
  };
};

/** The task of playing a sound. Throws RangeError on a reference outside 440–446 Hz. */
export const bendTask = (target: Sound, { harp, reference, exercise, level, tonic }: Asked): BendTask => {
  const hz = soundHz(target, reference);
  const centsOf = (sound: Sound): Cents => centsBetween(hz, soundHz(sound, reference));
  const start = naturalOf(target, harp);
  const natural = start === null ? null : centsOf(start);
  return {
    target,
    hz,
    exercise,
    tolerance: asCents(TOLERANCE[level]),
    natural,
    sounds: harp.sounds.map((sound) => ({ sound, cents: centsOf(sound) })),
    blue: tonic === null ? null : blueAround(target, tonic, natural),
  };
};
