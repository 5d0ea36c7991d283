/** What velocity does to the balance of partials, besides the level common to all. */
import { BASE_VELOCITY } from './levels';

/** Velocities from soft to the middle, and about from the middle to hard. */
const STEP = 35;

/** How far a velocity lies above the middle one, in steps: −1 soft, 0 middle, about 1 hard. */
export const hardness = (velocity: number): number => (velocity - BASE_VELOCITY) / STEP;

/**
 * A harder stroke lifts each octave of partials by the same number of dB: the pulse that starts it is shorter.
 * @param perOctave dB for one step of hardness
 */
export const tilted =
  (perOctave: number) =>
  (k: number, _frequency: number, velocity: number): number =>
    perOctave * hardness(velocity) * Math.log2(k);
