/** The turning speaker of an organ's cabinet, in numbers. */
export const ROTOR = {
  /** The slow speed of the trade's cabinets, in turns a second (common practice, no source). */
  turns: 0.8,
  /** Path of the sound, and how far it grows and shrinks on a turn, in seconds: 3 cents of vibrato. */
  path: 0.003,
  change: 0.00035,
  /** How much louder and softer each side gets, of 1. */
  swell: 0.2,
  /** How far from the middle the sides stand. */
  side: 0.6,
} as const;

/** The speaker's turning as a partial of a wave, which goes on from where it is so many seconds after it began to turn. */
export const rotorWave = (seconds: number): { readonly cosine: number; readonly sine: number } => {
  const angle = 2 * Math.PI * ROTOR.turns * seconds;
  return { cosine: Math.sin(angle), sine: Math.cos(angle) };
};
