/** What the log shows over time: sums for pictures, each with how much stands behind it. */
import type { LogEntry } from './log-entry';

/** How long was practised on a day by the player's own calendar; days without practice have none. */
export interface DayMinutes {
  readonly day: string;
  readonly minutes: number;
}

/** Minutes by day, days without any left out, oldest first. */
export const minutesByDay = (entries: readonly LogEntry[]): readonly DayMinutes[] => {
  const days = new Map<string, number>();
  for (const { day, seconds } of entries) days.set(day, (days.get(day) ?? 0) + seconds / 60);
  return [...days].map(([day, minutes]) => ({ day, minutes })).sort((a, b) => a.day.localeCompare(b.day));
};

/** Days from 1970-01-01 to a day like `2026-11-25`, by the Gregorian calendar. NaN for another text. */
export const dayNumber = (day: string): number => {
  const [year = Number.NaN, month = Number.NaN, date = Number.NaN] = day.split('-').map(Number);
  // The year begins in March here, so that a leap day is its last.
  const y = month <= 2 ? year - 1 : year;
  const m = (month + 9) % 12;
  const before = 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  return before + Math.floor((153 * m + 2) / 5) + date - 1 - 719_468;
};

/** The week a day is in, counted from the week of 1970-01-01; weeks begin on Monday (that day was a Thursday). */
export const weekOf = (day: string): number => Math.floor((dayNumber(day) + 3) / 7);

/** What the tries of seven days came to, heard or marked. */
export interface BendWeek {
  readonly week: number;
  readonly tries: number;
  readonly hits: number;
  /** From the target, mean and standard deviation; null with fewer than two measured tries. */
  readonly cents: { readonly mean: number; readonly spread: number } | null;
  /** How many of the tries have cents. */
  readonly measured: number;
}

/** A bend of one kind of harp, week by week. */
export interface BendProgress {
  readonly sound: string;
  readonly harp: string;
  /** The harp by its notes. */
  readonly harpKind: string;
  readonly tries: number;
  readonly hits: number;
  readonly weeks: readonly BendWeek[];
}

interface Sums {
  tries: number;
  hits: number;
  measured: number;
  cents: number;
  squares: number;
}

const NO_SUMS: Sums = { tries: 0, hits: 0, measured: 0, cents: 0, squares: 0 };

const weekFigures = (week: number, { tries, hits, measured, cents, squares }: Sums): BendWeek => {
  const mean = cents / measured;
  const variance = Math.max(0, (squares - measured * mean * mean) / (measured - 1));
  return {
    week,
    tries,
    hits,
    measured,
    cents: measured < 2 ? null : { mean, spread: Math.sqrt(variance) },
  };
};

/** Every bend that was tried, week by week, the one tried most first. */
export const bendProgress = (entries: readonly LogEntry[]): readonly BendProgress[] => {
  const bends = new Map<
    string,
    Pick<BendProgress, 'sound' | 'harp' | 'harpKind'> & { weeks: Map<number, Sums> }
  >();
  for (const { day, harp, harpKind, bends: sums } of entries)
    for (const sum of sums) {
      const id = `${sum.sound} ${harpKind}`;
      const bend = bends.get(id) ?? { sound: sum.sound, harp, harpKind, weeks: new Map<number, Sums>() };
      bends.set(id, bend);
      const week = weekOf(day);
      const now = bend.weeks.get(week) ?? NO_SUMS;
      bend.weeks.set(week, {
        tries: now.tries + sum.tries,
        hits: now.hits + sum.hits,
        measured: now.measured + sum.measured,
        cents: now.cents + sum.cents,
        squares: now.squares + sum.squares,
      });
    }
  return [...bends.values()]
    .map(({ sound, harp, harpKind, weeks }) => {
      const all = [...weeks].sort(([a], [b]) => a - b).map(([week, sums]) => weekFigures(week, sums));
      return {
        sound,
        harp,
        harpKind,
        tries: all.reduce((sum, { tries }) => sum + tries, 0),
        hits: all.reduce((sum, { hits }) => sum + hits, 0),
        weeks: all,
      };
    })
    .sort((a, b) => b.tries - a.tries);
};

/** The chord tones hit in a week. */
export interface FunctionWeek {
  readonly week: number;
  /** Notes heard. */
  readonly notes: number;
  /** Shares of them by degree, 0–1, those of the chord alone. */
  readonly shares: Readonly<Record<string, number>>;
}

/** Chord tones hit by their degree, week by week. */
export const functionProgress = (entries: readonly LogEntry[]): readonly FunctionWeek[] => {
  const weeks = new Map<number, { notes: number; counts: Record<string, number> }>();
  for (const { day, heard } of entries) {
    if (heard === null || heard.notes === 0) continue;
    const week = weeks.get(weekOf(day)) ?? { notes: 0, counts: {} };
    weeks.set(weekOf(day), week);
    week.notes += heard.notes;
    for (const [degree, count] of Object.entries(heard.functions))
      week.counts[degree] = (week.counts[degree] ?? 0) + count;
  }
  return [...weeks]
    .sort(([a], [b]) => a - b)
    .map(([week, { notes, counts }]) => ({
      week,
      notes,
      shares: Object.fromEntries(Object.entries(counts).map(([degree, count]) => [degree, count / notes])),
    }));
};

/** A song's tempos: when, how fast, and how it went. */
export interface SongLadder {
  readonly song: string;
  readonly choruses: number;
  readonly steps: readonly {
    readonly day: string;
    readonly tempo: number;
    readonly choruses: number;
    readonly clean: number;
    readonly judged: number;
  }[];
}

/** The tempo ladder of every song, the one played most first. */
export const songLadders = (entries: readonly LogEntry[]): readonly SongLadder[] => {
  const songs = new Map<string, SongLadder['steps'][number][]>();
  for (const { kind, song, day, laps } of entries) {
    if (kind !== 'song') continue;
    const steps = songs.get(song) ?? [];
    songs.set(song, steps);
    for (const { tempo, choruses, clean, judged } of laps) {
      const known = steps.findIndex((each) => each.day === day && each.tempo === tempo);
      const before = steps[known];
      const step = {
        day,
        tempo,
        choruses: choruses + (before?.choruses ?? 0),
        clean: clean + (before?.clean ?? 0),
        judged: judged + (before?.judged ?? 0),
      };
      if (before === undefined) steps.push(step);
      else steps[known] = step;
    }
  }
  return [...songs]
    .filter(([, steps]) => steps.length > 0)
    .map(([song, steps]) => ({
      song,
      choruses: steps.reduce((sum, { choruses }) => sum + choruses, 0),
      steps,
    }))
    .sort((a, b) => b.choruses - a.choruses);
};
