import { centsBetween, hzOf, STANDARD_PITCH, type Temperament } from '../theory/temperament';
import { asCents, asMidi, asPitchClass, type Cents, type Hz } from '../theory/units';
import type { ReedCents } from './build-harp';
import type { Harp, Sound, Tuning } from './harp';

/** How the reeds of a harp are set against equal temperament. */
export interface Intonation {
  readonly name: string;
  /** One line in words for the player. */
  readonly description: string;
  /** Cents from equal temperament by scale step above the harp key, in semitones; steps left out are unpublished. */
  readonly cents: Readonly<Partial<Record<number, number>>>;
  readonly source: string;
}

/** Steps all published just tables share, in whole cents: tonic chord 1, 5/4, 3/2; second 9/8; seventh 15/8. */
const SHARED = { 0: 0, 2: 4, 4: -14, 7: 2, 11: -12 } as const;
const TABLES = 'ji_hca01.scl, ji_hca02.scl, ji_hca03.scl, ji_hca23.scl and tuning02.php, ohw.se, 2004';

/**
 * Published tables for the standard layout, without octave stretch. They differ in the fourth (draw 5 and 9) and
 * the sixth (draw 6 and 10) only; the one for minor reeds adds their third and seventh by arithmetic. "5-limit" alone does not fix the fourth: accounts disagree about it.
 */
const INTONATION_TABLE = {
  equal: {
    name: 'Equal',
    description: 'Every reed on the piano’s pitch: melodies agree with the band, chords beat.',
    cents: { 0: 0, 1: 0, 2: 0, 3: 0, 4: 0, 5: 0, 6: 0, 7: 0, 8: 0, 9: 0, 10: 0, 11: 0 },
    source: 'definition',
  },
  'just-first': {
    name: 'Just, first position',
    description: 'Smooth chords for first position; the fourth and sixth are pure above the tonic.',
    cents: { ...SHARED, 5: -2, 9: -16 },
    source: `${TABLES} (5-limit, 1st position)`,
  },
  'just-second': {
    name: 'Just, second position',
    description: 'Draw 2 to 5 rings as one seventh chord; draw 5 is plainly flat as a melody note.',
    cents: { ...SHARED, 5: -29, 9: 6 },
    source: `${TABLES} (7-limit, fourth 21/16, sixth 27/16)`,
  },
  'just-third': {
    name: 'Just, third position',
    description: 'Smooth draw chords for third position; draw 5 is high.',
    cents: { ...SHARED, 5: 20, 9: 6 },
    source: `${TABLES} (fourth 27/20)`,
  },
  'just-minor': {
    name: 'Just, minor tunings',
    description: 'Natural minor reeds: every minor chord on one breath rings without beating.',
    cents: { ...SHARED, 3: 16, 5: 20, 9: 6, 10: 18 },
    source: `by arithmetic: minor thirds 6/5 on the key note and on its fifth 3/2 (6/5, 9/5), with the fourth 27/20 and sixth 27/16 of ${TABLES}`,
  },
  compromise: {
    name: 'Compromise, second and third position',
    description: 'Smooth chords with a fourth close to the piano’s.',
    cents: { ...SHARED, 5: -2, 9: 6 },
    source: `${TABLES} (compromise 2nd and 3rd)`,
  },
  'nineteen-limit': {
    name: 'Nineteen-limit',
    description: 'Smooth chords, and melody notes on draw 5 and 9 within two cents of the piano.',
    cents: { ...SHARED, 5: 1, 9: 6 },
    source: `${TABLES} (19-limit)`,
  },
} as const satisfies Readonly<Record<string, Intonation>>;

export type IntonationId = keyof typeof INTONATION_TABLE;

/** Intonations by id. */
export const INTONATIONS: Readonly<Record<IntonationId, Intonation>> = INTONATION_TABLE;

/** True when a text names an intonation of the table. */
export const isIntonationId = (text: string): text is IntonationId => Object.hasOwn(INTONATION_TABLE, text);

/** Ids of all intonations, equal temperament first. */
export const INTONATION_IDS: readonly IntonationId[] = Object.keys(INTONATION_TABLE).filter(isIntonationId);

/** The cents of every reed, and the steps the published table does not cover (those reeds stay equal). */
export interface ReedIntonation {
  readonly cents: ReedCents;
  /** Semitones above the key, without octave. */
  readonly uncovered: readonly number[];
}

/**
 * An intonation laid on a tuning by scale step, so that retuned harps whose notes are those of the standard one
 * get its published values.
 */
export const intonate = (tuning: Tuning, id: IntonationId): ReedIntonation => {
  const { cents }: Intonation = INTONATIONS[id];
  const steps = [...tuning.blow, ...tuning.draw].map((step) => asPitchClass(step));
  const row = (reeds: readonly number[]): readonly number[] =>
    reeds.map((step) => cents[asPitchClass(step)] ?? 0);
  return {
    cents: { blow: row(tuning.blow), draw: row(tuning.draw) },
    uncovered: [...new Set(steps)].filter((step) => cents[step] === undefined).sort((a, b) => a - b),
  };
};

/**
 * How far a sound is expected from the equal-tempered pitch at A4 = 440 Hz, as a tuner shows it: its own cents and
 * the harp's reference pitch together. Throws RangeError on a reference outside 440–446 Hz.
 */
export const expectedCents = (sound: Sound, reference: Hz = STANDARD_PITCH): Cents =>
  centsBetween(hzOf(sound.pitch), soundHz(sound, reference));

/** The frequency a sound is expected at. Throws RangeError on a reference outside 440–446 Hz. */
export const soundHz = (sound: Sound, reference: Hz = STANDARD_PITCH): Hz =>
  hzOf(asMidi(sound.pitch + sound.cents / 100), { reference });

/**
 * A temperament for the band that agrees with a harp: each pitch class takes the mean cents of the reeds that give
 * it; those the harp lacks stay equal.
 */
export const temperamentOf = (harp: Harp, reference: Hz = STANDARD_PITCH): Temperament => ({
  reference,
  cents: Array.from({ length: 12 }, (_, pitchClass) => {
    const reeds = harp.reeds.filter(({ pitch }) => asPitchClass(pitch) === pitchClass);
    const sum = reeds.reduce((total, { cents }) => total + cents, 0);
    return asCents(reeds.length === 0 ? 0 : sum / reeds.length);
  }),
});
