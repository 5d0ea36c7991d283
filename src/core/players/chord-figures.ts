import type { Chord } from '../theory/chord';
import { chordShape } from './chord-scale';
import type { Register } from './voicing';

/** Semitones the two-note figure needs above its root. */
const FIGURE_SPAN = 10;

/**
 * Root with fifth, sixth or seventh: the shuffle figure of the left hand or the low strings. Where it has no room above
 * the root, all of it lies below, so that it stays one figure.
 */
export const dyad = (chord: Chord, mark: string, register: Register): readonly number[] => {
  const { fifth, seventh, minor } = chordShape(chord);
  const sixth = minor ? (seventh ?? 9) : 9;
  const upper = mark === '5' ? fifth : mark === '6' ? sixth : (seventh ?? 9);
  const root = register.low + ((((chord.root - register.low) % 12) + 12) % 12);
  const figure = root + FIGURE_SPAN <= register.high ? [root, root + upper] : [root + upper - 12, root];
  return figure.filter((pitch) => pitch >= register.low);
};

/** The neighbour chord of a riff: the third stays, fifth to sixth, seventh to root, back at the next stroke. */
export const neighbour = (
  chord: Chord,
  pitches: readonly number[],
  register: Register,
): readonly number[] => {
  const { third, fifth, seventh } = chordShape(chord);
  const moved = pitches.map((pitch) => {
    const step = (((pitch - chord.root) % 12) + 12) % 12;
    return step === fifth || step === seventh ? pitch + 2 : pitch;
  });
  const fits = third === 4 && fifth === 7 && moved.every((pitch) => pitch <= register.high);
  return fits ? [...new Set(moved)] : pitches;
};

/** A voicing so many semitones away, where it stays within the register. */
export const shifted = (pitches: readonly number[], by: number, register: Register): readonly number[] => {
  const moved = pitches.map((pitch) => pitch + by);
  return moved.every((pitch) => pitch >= register.low && pitch <= register.high) ? moved : pitches;
};
