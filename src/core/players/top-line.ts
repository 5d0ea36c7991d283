import type { Random } from '../theory/random';
import type { Passage } from './passage';
import type { Register } from './voicing';

/** Contours of the top notes over the four bars of a phrase, 0–1 of the room there is (common practice, no source). */
const CONTOURS: readonly (readonly number[])[] = [
  [0.2, 0.5, 0.9, 0.5],
  [0.1, 0.4, 0.7, 1],
  [0.9, 0.7, 0.4, 0.2],
  [0.5, 0.2, 0.5, 0.9],
  [0.6, 0.9, 0.4, 0.1],
];

/** How much of the register lies between the quietest place of the top line and the most driven, and within a phrase. */
const CLIMB = 0.6;
const ARCH = 0.34;
/** Top notes begin this far above the register's low end: three voices must fit below. */
const FOOT = 9;

/**
 * Where the top note of the chords should lie in each bar, as a MIDI number: every phrase has a contour, and all climb
 * with the energy of the bar.
 */
export const topLine = (
  random: Random,
  { shapes }: Pick<Passage, 'shapes'>,
  { low, high }: Register,
): ((bar: number) => number) => {
  const phrases = Array.from({ length: (shapes.at(-1)?.phrase.phrase ?? 0) + 1 }, () => ({
    contour: CONTOURS[Math.floor(random() * CONTOURS.length)] ?? [],
    shift: (random() - 0.5) * 0.24,
  }));
  const room = Math.max(0, high - low - FOOT);
  return (bar) => {
    const shape = shapes[Math.min(bar, shapes.length - 1)];
    const phrase = phrases[shape?.phrase.phrase ?? 0];
    const contour = phrase?.contour[(shape?.phrase.bar ?? 0) % 4] ?? 0.5;
    const share = (shape?.energy ?? 0.6) * CLIMB + contour * ARCH + (phrase?.shift ?? 0);
    return low + FOOT + Math.min(1, Math.max(0, share)) * room;
  };
};
