/** Where each bend of a harp stands in the log: how often it is hit of late, and how often before. */
import type { BendProgress, BendWeek } from './progress';

/** Tries and hits of some weeks. */
export interface HitCount {
  readonly tries: number;
  readonly hits: number;
  /** Mean from the target in cents; null where nothing was measured. */
  readonly cents: number | null;
}

/** A bend with its place on the comb. */
export interface CombBend {
  readonly sound: string;
  readonly hole: number;
  /** Counted from the comb itself: natural blow notes are 1, natural draw notes −1, bends and overbends further out. */
  readonly row: number;
  /** The latest weeks in which the harp's bends were tried. */
  readonly lately: HitCount;
  /** All weeks before; no tries where there are none. */
  readonly before: HitCount;
}

/** Weeks that count as late: long enough for some tries at each bend. */
export const LATE_WEEKS = 4;

const countOf = (weeks: readonly BendWeek[]): HitCount => {
  const sum = (of: (week: BendWeek) => number): number => weeks.reduce((total, week) => total + of(week), 0);
  const measured = sum(({ cents, measured: count }) => (cents === null ? 0 : count));
  const cents = sum((week) => (week.cents?.mean ?? 0) * week.measured);
  return {
    tries: sum(({ tries }) => tries),
    hits: sum(({ hits }) => hits),
    cents: measured === 0 ? null : cents / measured,
  };
};

/** Where a sound stands, by its id (`4D'`, `6OB`); null for what is none. */
const placeOf = (sound: string): Pick<CombBend, 'hole' | 'row'> | null => {
  const [, hole, over, breath, bends = ''] = /^(\d+)(O?)([BD])('*)$/.exec(sound) ?? [];
  if (hole === undefined) return null;
  // On a hole only the higher reed bends and only the lower one overbends, so no place is wanted twice.
  const out = over === 'O' ? 2 : 1 + bends.length;
  return { hole: Number(hole), row: breath === 'B' ? out : -out };
};

/** The bends of one harp on its comb, by hole; what is late is counted from the last week any of them was tried. */
export const combProgress = (bends: readonly BendProgress[]): readonly CombBend[] => {
  const last = Math.max(...bends.flatMap(({ weeks }) => weeks.map(({ week }) => week)));
  const isLate = ({ week }: BendWeek): boolean => week > last - LATE_WEEKS;
  return bends
    .flatMap(({ sound, weeks }) => {
      const place = placeOf(sound);
      if (place === null) return [];
      const lately = countOf(weeks.filter(isLate));
      const before = countOf(weeks.filter((week) => !isLate(week)));
      return [{ sound, ...place, lately, before }];
    })
    .sort((a, b) => a.hole - b.hole || b.row - a.row);
};
