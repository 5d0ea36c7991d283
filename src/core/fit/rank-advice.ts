import { BEYOND_BEGINNERS } from './usual-positions';

/** What of a row of advice counts for its rank. */
export interface Rankable {
  readonly harpIndex: number;
  /** 1–12. */
  readonly position: number;
  /** Which choice the position is by custom, 1 first. */
  readonly choice: number;
  /** 0–100, whole: the number that is shown. */
  readonly fit: number;
  /** 0–1: what `fit` is rounded from. */
  readonly score: number;
}

/**
 * Sorts advice by what is shown: the choice by custom, then the fit. Where both are alike the harp in hand comes
 * first, because it is there, then what reaches a little more. Positions a beginner leaves alone are left out while
 * there are others.
 * @param inHand index of the harp the player holds, or null.
 */
export const rankAdvice = <Row extends Rankable>(
  rows: readonly Row[],
  inHand: number | null,
): readonly Row[] => {
  const within = rows.filter(({ choice }) => choice !== BEYOND_BEGINNERS);
  const held = ({ harpIndex }: Rankable): number => (harpIndex === inHand ? 0 : 1);
  return (within.length > 0 ? within : rows).toSorted(
    (a, b) =>
      a.choice - b.choice ||
      b.fit - a.fit ||
      held(a) - held(b) ||
      b.score - a.score ||
      a.position - b.position ||
      a.harpIndex - b.harpIndex,
  );
};
