import type { KeyMode } from '../theory/pitch';
import type { Place } from './places';

/** What of a row of advice counts for its rank. */
export interface Rankable {
  readonly harpIndex: number;
  /** 1–12. */
  readonly position: number;
  /** 0–1. */
  readonly score: number;
  /** The same places in the same order in every row. */
  readonly places: readonly Place[];
}

/**
 * What tips the scale between harps that come out nearly alike, in points of the score from 0 to 1 (ours, common
 * practice, no source): the usual positions, because most lessons and tunes are in them, and the harp in hand,
 * because it is there. Together they are worth less than a twentieth of the score.
 */
export const PREFERENCE = {
  inHand: 0.02,
  position: {
    major: { 1: 0.01, 2: 0.02, 3: 0.01 },
    minor: { 2: 0.005, 3: 0.02, 4: 0.015, 5: 0.015 },
  },
} as const satisfies {
  readonly inHand: number;
  readonly position: Readonly<Record<KeyMode, Readonly<Partial<Record<number, number>>>>>;
};

/** Differences of a score below this are rounding. */
const ROUNDING = 1e-12;

/** True when the first reaches every place the second does at no more effort, and something more or easier. */
const isBetterThroughout = (a: Rankable, b: Rankable): boolean =>
  a.score > b.score + ROUNDING &&
  b.places.every(({ effort }, i) => {
    const own = a.places[i]?.effort ?? null;
    return effort === null || (own !== null && own <= effort);
  });

/**
 * Sorts advice, best first: by score with the preferences of near-ties added. A preference never lifts a harp above
 * one that reaches all it reaches at no more effort.
 * @param inHand index of the harp the player holds, or null.
 */
export const rankAdvice = <Row extends Rankable>(
  rows: readonly Row[],
  mode: KeyMode,
  inHand: number | null,
): readonly Row[] => {
  const usual: Readonly<Partial<Record<number, number>>> = PREFERENCE.position[mode];
  const value = ({ score, position, harpIndex }: Rankable): number =>
    score + (usual[position] ?? 0) + (harpIndex === inHand ? PREFERENCE.inHand : 0);
  const waiting = [...rows].sort(
    (a, b) => value(b) - value(a) || a.position - b.position || a.harpIndex - b.harpIndex,
  );
  const ranked: Row[] = [];
  while (waiting.length > 0) {
    const next = waiting.findIndex(
      (row, i) => !waiting.some((other, j) => j > i && isBetterThroughout(other, row)),
    );
    ranked.push(...waiting.splice(Math.max(0, next), 1));
  }
  return ranked;
};
