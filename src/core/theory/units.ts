/**
 * Units that are easily confused, as branded numbers: a value gets its brand once, where it enters,
 * and arithmetic on it yields a plain number that must be branded again on purpose.
 */
declare const unit: unique symbol;
type Unit<Name extends string> = number & { readonly [unit]: Name };

/** MIDI note number; 60 = C4, 69 = A4. Fractions are allowed where a pitch lies between keys. */
export type Midi = Unit<'Midi'>;
/** Octave-free pitch, 0 = C … 11 = B. */
export type PitchClass = Unit<'PitchClass'>;
/** Hundredths of an equal-tempered semitone. */
export type Cents = Unit<'Cents'>;
/** Cycles per second. */
export type Hz = Unit<'Hz'>;
/** Musical time, 480 to the quarter note (`TICKS_PER_QUARTER`). */
export type Ticks = Unit<'Ticks'>;
/** Beats a minute; the beat is the meter's beat (a dotted quarter in 12/8). */
export type Bpm = Unit<'Bpm'>;
/** Seconds of time. */
export type Seconds = Unit<'Seconds'>;
/** Milliseconds since 1970-01-01T00:00Z. */
export type EpochMs = Unit<'EpochMs'>;

/** 480 divides by 3 (triplets) and by 16, so every feel lands on whole ticks or within half a tick. */
export const TICKS_PER_QUARTER = 480;

const finite = (value: number, name: string): number => {
  if (!Number.isFinite(value)) throw new RangeError(`${name} must be a finite number, got ${value}`);
  return value;
};

/** Brands a MIDI note number. Throws RangeError when it is not finite. */
export const asMidi = (value: number): Midi => finite(value, 'Midi') as Midi;
/** Brands any whole number of semitones as a pitch class, modulo 12. Throws RangeError on fractions. */
export const asPitchClass = (value: number): PitchClass => {
  if (!Number.isInteger(value)) throw new RangeError(`PitchClass must be a whole number, got ${value}`);
  return (((value % 12) + 12) % 12) as PitchClass;
};
/** Brands cents. Throws RangeError when not finite. */
export const asCents = (value: number): Cents => finite(value, 'Cents') as Cents;
/** Brands a frequency. Throws RangeError unless it is finite and above zero. */
export const asHz = (value: number): Hz => {
  if (!(finite(value, 'Hz') > 0)) throw new RangeError(`Hz must be above 0, got ${value}`);
  return value as Hz;
};
/** Brands ticks, rounding to a whole tick. Throws RangeError when not finite. */
export const asTicks = (value: number): Ticks => Math.round(finite(value, 'Ticks')) as Ticks;
/** Brands a tempo. Throws RangeError unless it is finite and above zero. */
export const asBpm = (value: number): Bpm => {
  if (!(finite(value, 'Bpm') > 0)) throw new RangeError(`Bpm must be above 0, got ${value}`);
  return value as Bpm;
};
/** Brands seconds. Throws RangeError when not finite. */
export const asSeconds = (value: number): Seconds => finite(value, 'Seconds') as Seconds;
/** Brands a wall-clock time in milliseconds. Throws RangeError when not finite. */
export const asEpochMs = (value: number): EpochMs => finite(value, 'EpochMs') as EpochMs;
