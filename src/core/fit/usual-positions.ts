import type { Tuning } from '../harp/harp';
import type { TechniqueChoice } from '../harp/reach';
import { RICHTER } from '../harp/tunings';
import type { KeyMode } from '../theory/pitch';

/**
 * Which positions players try first (common practice, no source): second for a blues with a major key, also where the
 * V comes as early as bar 2, then first and third; for a minor one third, then second, fourth and fifth, second later
 * where its minor third, a draw bend, is not to be had. Natural notes alone: nothing beyond third. A tuning with minor
 * draw chords is played in second in minor. Position number to choice, 1 first; what is left out comes after them.
 */
const MAJOR: Choices = { 2: 1, 1: 2, 3: 2 };
const MINOR: Choices = { 3: 1, 2: 2, 4: 3, 5: 4 };
const MINOR_WITHOUT_DRAW_BENDS: Choices = { 3: 1, 4: 2, 5: 3, 2: 4 };
const MINOR_NATURAL_NOTES: Choices = { 3: 1, 2: 2, 1: 3 };
const MINOR_TUNED: Readonly<Record<KeyMode, Choices>> = { major: {}, minor: { 2: 1, 1: 2, 3: 3 } };

type Choices = Readonly<Partial<Record<number, number>>>;

/** The choice of positions that nobody tries first. */
const UNUSUAL = 5;
/** Later than that: positions a beginner leaves alone. */
export const BEYOND_BEGINNERS = 6;
const LAST_FOR_BEGINNERS = 3;

/** Position habits belong to the standard layout; up to so many retuned reeds leave them alone. */
const RETUNED_AT_MOST = 3;

/** Draw 3 of the standard layout lowered: the draw chord is minor. */
const isMinorTuned = ({ draw }: Tuning): boolean => draw[2] === 10;

const isNearStandard = ({ blow, draw }: Tuning): boolean => {
  const changed = (row: readonly number[], standard: readonly number[]): number =>
    standard.filter((reed, i) => row[i] !== reed).length;
  return changed(blow, RICHTER.blow) + changed(draw, RICHTER.draw) <= RETUNED_AT_MOST;
};

const minorChoices = ({ drawBends, blowBends, overbends }: TechniqueChoice): Choices => {
  if (drawBends) return MINOR;
  return blowBends || overbends ? MINOR_WITHOUT_DRAW_BENDS : MINOR_NATURAL_NOTES;
};

/**
 * Which choice a position is by custom: 1 is tried first, `UNUSUAL` and `BEYOND_BEGINNERS` last. Tunings without
 * customs of their own have every position as first choice: there the notes alone decide.
 */
export const choiceByCustom = (
  tuning: Tuning,
  position: number,
  mode: KeyMode,
  technique: TechniqueChoice,
): number => {
  const minorTuned = isMinorTuned(tuning);
  if (!minorTuned && !isNearStandard(tuning)) return 1;
  const beginner = !technique.drawBends && !technique.blowBends && !technique.overbends;
  if (beginner && position > LAST_FOR_BEGINNERS) return BEYOND_BEGINNERS;
  const choices = minorTuned ? MINOR_TUNED[mode] : mode === 'major' ? MAJOR : minorChoices(technique);
  return choices[position] ?? UNUSUAL;
};

const ORDINALS = ['', 'first', 'second', 'third', 'fourth'];

/** A choice in words: `first choice by custom`, `not usual`. */
export const choiceWords = (choice: number): string => {
  if (choice === BEYOND_BEGINNERS) return 'not with natural notes alone';
  const ordinal = ORDINALS[choice];
  return ordinal === undefined ? 'not usual' : `${ordinal} choice by custom`;
};
