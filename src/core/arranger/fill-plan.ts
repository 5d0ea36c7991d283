import type { PhrasePlace } from '../chart/phrases';
import type { Level } from '../feels/level';
import { FILL_SIZES, type FillSize } from '../players/passage';
import { createRandom, type Random, seedFrom } from '../theory/random';

/**
 * Where the drums fill, and how much: at the ends of phrases. Chances after 1,150 recorded performances of drummers to a click (Groove MIDI
 * Dataset, Gillick et al. 2019): in shuffles toms fill bars 4 and 8 in about three of ten, other bars hardly ever; a crash
 * on the next first beat after every other fill. The last bar of a chorus is filled more the more is going on, and so is,
 * a little less, that of a section or of eight bars of a long form (common practice, no source).
 */
const CHANCE = { nothing: 0.03, phrase: 0.3, stretch: 0.5 } as const;
const LAST_FILL = { least: 0.5, most: 0.9 } as const;
/** A crash on the first beat of a chorus after a fill, and without one when much is going on. */
const CRASH = { afterFill: 0.42, within: 0.3, without: 0.1 } as const;

type Sizes = Readonly<Partial<Record<FillSize, number>>>;

/** How often each size is taken at the end of a chorus, by level, and elsewhere (common practice, no source). */
const LAST_SIZES: readonly [Sizes, Sizes, Sizes] = [
  { beat: 5, 'pick-up': 3, cue: 3 },
  { beat: 4, half: 3, cue: 2, 'pick-up': 1, bar: 0.6 },
  { half: 4, beat: 3, cue: 2, bar: 1.2, 'pick-up': 0.6 },
];
const STRETCH_SIZES: Sizes = { beat: 5, half: 3, 'pick-up': 1, cue: 1.5, bar: 0.3 };
const SMALL_SIZES: Sizes = { beat: 5, 'pick-up': 2, half: 2, cue: 1 };

const sizeFrom = (random: Random, sizes: Sizes): FillSize => {
  const entries = FILL_SIZES.map((size) => [size, sizes[size] ?? 0] as const);
  let left = random() * entries.reduce((sum, [, weight]) => sum + weight, 0);
  for (const [size, weight] of entries) {
    left -= weight;
    if (left < 0) return size;
  }
  return 'beat';
};

/** Whether a chorus of this energy ends in a fill; known without making the chorus, so that the next can crash. */
export const endsInFill = (seed: number, chorus: number, energy: number): boolean =>
  createRandom(seedFrom(seed, 'last fill', chorus))() <
  LAST_FILL.least + (LAST_FILL.most - LAST_FILL.least) * energy;

/** Whether a chorus begins with a crash. */
export const beginsWithCrash = (
  seed: number,
  chorus: number,
  energy: number,
  afterFill: boolean,
): boolean => {
  const draw = createRandom(seedFrom(seed, 'crash', chorus))();
  if (chorus === 0 || energy < 0.4) return false;
  return draw < (afterFill ? CRASH.afterFill : energy > 0.6 ? CRASH.without : 0);
};

/** What the drums do at the end of a bar, and whether the next begins with a cymbal. */
export interface BarFill {
  readonly fill: FillSize | 'none';
  readonly crashAfter: boolean;
}

/** The fill of every bar of a chorus, by the level of its bars. */
export const fillsOf = (
  random: Random,
  levels: readonly Level[],
  phrases: readonly PhrasePlace[],
  lastFilled: boolean,
): readonly BarFill[] =>
  phrases.map(({ ends }, bar) => {
    const level = levels[bar] ?? 1;
    const draws = [random(), random()] as const;
    const sizes = {
      nothing: SMALL_SIZES,
      phrase: SMALL_SIZES,
      stretch: STRETCH_SIZES,
      chorus: LAST_SIZES[level],
    };
    const filled = ends === 'chorus' ? lastFilled : draws[0] < CHANCE[ends];
    const fill = sizeFrom(random, sizes[ends]);
    return { fill: filled ? fill : 'none', crashAfter: filled && level > 0 && draws[1] < CRASH.within };
  });
