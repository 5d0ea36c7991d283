import { asCents, asHz, type Cents, type Hz, type Midi } from './units';

/** A4 by ISO 16:1975, "Acoustics — Standard tuning frequency". */
export const STANDARD_PITCH: Hz = asHz(440);

/**
 * Reference pitches offered. Harmonicas are tuned above 440 because breath pressure lowers the pitch, up to 446
 * for hard players ("Harmonica For Dummies", publisher's page on tuning tests).
 */
export const REFERENCE_PITCHES = { low: 440, high: 446 } as const;

const A4 = 69;

/** How key numbers become frequencies. */
export interface Temperament {
  /** Frequency of A4, 440–446 Hz. */
  readonly reference: Hz;
  /** Deviation of each pitch class from equal temperament, C first; absent means equal temperament. */
  readonly cents?: readonly Cents[];
}

/** Equal temperament at A4 = 440 Hz. */
export const EQUAL_TEMPERAMENT: Temperament = { reference: STANDARD_PITCH };

/** Brands a reference pitch. Throws RangeError outside 440–446 Hz. */
export const asReferencePitch = (value: number): Hz => {
  if (!(value >= REFERENCE_PITCHES.low && value <= REFERENCE_PITCHES.high)) {
    throw new RangeError(
      `The reference pitch must be from ${REFERENCE_PITCHES.low} to ${REFERENCE_PITCHES.high} Hz, got ${value}`,
    );
  }
  return asHz(value);
};

/**
 * Frequency of a key number: reference · 2^((midi − 69) / 12), moved by the temperament's cents for its pitch
 * class. Fractional key numbers lie between keys and take the cents of the nearest key.
 * Throws RangeError when the reference is outside 440–446 Hz or the cents are not twelve.
 */
export const hzOf = (pitch: Midi, temperament: Temperament = EQUAL_TEMPERAMENT): Hz => {
  const { cents } = temperament;
  if (cents !== undefined && cents.length !== 12) {
    throw new RangeError(`A temperament needs 12 values in cents, got ${cents.length}`);
  }
  const nearest = ((Math.round(pitch) % 12) + 12) % 12;
  const semitones = pitch - A4 + (cents?.[nearest] ?? 0) / 100;
  return asHz(asReferencePitch(temperament.reference) * 2 ** (semitones / 12));
};

/** The interval from one frequency up to another (negative when downwards). */
export const centsBetween = (from: Hz, to: Hz): Cents => asCents(1200 * Math.log2(to / from));

/** The (fractional) equal-tempered key number of a frequency at a reference pitch. */
export const midiOf = (hz: Hz, reference: Hz = STANDARD_PITCH): number =>
  A4 + centsBetween(asReferencePitch(reference), hz) / 100;

/** Whole cents with their sign, as on a tuner: `+12`, `−3`, `0`. */
export const signedCents = (cents: number): string => {
  const whole = Math.round(cents);
  return whole > 0 ? `+${whole}` : whole < 0 ? `−${-whole}` : '0';
};
