/**
 * The one level scale of all voices: the electric piano's C4 at velocity 80 has this BS.1770 momentary loudness,
 * and every other sound stands to it as the General MIDI balance of the measured sound set does. The value is
 * the programme level of EBU R 128; at that level no voice reaches full scale at velocity 127.
 */
export const REFERENCE_LOUDNESS_LUFS = -23;

/** Middle of the velocity range, at which the tone tables were taken. */
export const BASE_VELOCITY = 80;

/** Amplitude factor of a velocity 1–127 against velocity 80: amplitude follows the square (General MIDI practice). */
export const velocityGain = (velocity: number): number => (velocity / BASE_VELOCITY) ** 2;
