/** The year of practice that ends now, day by day. */
import { type DayMinutes, dayNumber, weekOf } from './progress';

/** Weeks in the picture of a year: the one that goes on now, and fifty-two whole ones before. */
export const YEAR_WEEKS = 53;

/** A day with its place in the picture. */
export interface DayPlace extends DayMinutes {
  /** 0–52, the last being this one. */
  readonly week: number;
  /** 0 Monday – 6 Sunday. */
  readonly weekday: number;
}

/**
 * The days of the year that ends with this week. Days before it, and days to come by a clock that was wrong, are left out.
 * @param today such as `2026-11-25`.
 */
export const yearUpTo = (days: readonly DayMinutes[], today: string): readonly DayPlace[] => {
  const first = weekOf(today) - YEAR_WEEKS + 1;
  return days.flatMap((each) => {
    const week = weekOf(each.day) - first;
    // 1970-01-01, from which days are counted, was a Thursday.
    const weekday = dayNumber(each.day) + 3 - 7 * weekOf(each.day);
    return week >= 0 && week < YEAR_WEEKS ? [{ ...each, week, weekday }] : [];
  });
};
