import { describe, expect, it } from 'vitest';
import type { LogEntry } from '../../../src/core/log/log-entry';
import {
  bendProgress,
  dayNumber,
  functionProgress,
  minutesByDay,
  songLadders,
  weekOf,
} from '../../../src/core/log/progress';
import { asEpochMs } from '../../../src/core/theory/units';

const entry = (day: string, change: Partial<LogEntry> = {}): LogEntry => ({
  id: day,
  kind: 'song',
  began: asEpochMs(0),
  day,
  song: 'Wet Boots',
  form: 'Twelve-bar',
  key: 'G',
  harp: 'C harp',
  harpKind: 'C',
  position: 2,
  choruses: 2,
  seconds: 120,
  laps: [],
  heard: null,
  bends: [],
  phrases: [],
  ...change,
});

/** Tries at 4D' with these cents. */
const bend = (...cents: readonly number[]) => ({
  sound: "4D'",
  tries: cents.length,
  hits: cents.filter((each) => Math.abs(each) <= 25).length,
  measured: cents.length,
  cents: cents.reduce((sum, each) => sum + each, 0),
  squares: cents.reduce((sum, each) => sum + each * each, 0),
});

describe('days', () => {
  it.each([
    ['1970-01-01', 0],
    ['1970-03-01', 59],
    ['2000-02-29', 11_016],
    ['2026-11-25', 20_782],
  ])('counts the days to %s', (day, number) => {
    expect(dayNumber(day)).toBe(number);
    expect(Date.parse(`${day}T00:00:00Z`) / 86_400_000).toBe(number);
  });

  it('are in weeks that begin on Monday', () => {
    // 2026-11-23 was a Monday (any calendar).
    const weeks = ['2026-11-22', '2026-11-23', '2026-11-29', '2026-11-30'].map(weekOf);
    expect(weeks.map((week) => week - (weeks[0] ?? 0))).toEqual([0, 1, 1, 2]);
  });
});

describe('progress', () => {
  it('has the minutes of each day', () => {
    const days = minutesByDay([entry('2026-11-25'), entry('2026-11-23'), entry('2026-11-25')]);
    expect(days).toEqual([
      { day: '2026-11-23', minutes: 2 },
      { day: '2026-11-25', minutes: 4 },
    ]);
  });

  it('has mean and spread of a bend as the samples themselves have them, over several entries', () => {
    const entries = [
      entry('2026-11-23', { bends: [bend(10, -20, 40)] }),
      entry('2026-11-25', { bends: [bend(0, 5)] }),
      entry('2026-11-30', { bends: [bend(3)] }),
    ];
    const [progress] = bendProgress(entries);
    expect(progress).toMatchObject({ sound: "4D'", harp: 'C harp', tries: 6, hits: 5 });
    // 10, −20, 40, 0, 5: mean 7, sample standard deviation √(1880 / 4) = 21.679 (worked by hand).
    expect(progress?.weeks[0]?.cents?.mean).toBeCloseTo(7, 9);
    expect(progress?.weeks[0]?.cents?.spread).toBeCloseTo(21.6795, 3);
    expect(progress?.weeks[1]?.cents).toBeNull();
  });

  it('keeps the same bend on other harps apart', () => {
    const entries = [
      entry('2026-11-23', { bends: [bend(1)] }),
      entry('2026-11-23', { bends: [bend(1)], harp: 'A harp', harpKind: 'A' }),
    ];
    expect(bendProgress(entries).map(({ harp }) => harp)).toEqual(['C harp', 'A harp']);
  });

  it('has chord tones as shares of all notes that were heard', () => {
    const heard = {
      ...{ notes: 10, chord: 6, blue: 0, scale: 4, timed: 0, early: 0, late: 0 },
      functions: { '3': 4, b7: 2 },
    };
    const [week] = functionProgress([entry('2026-11-24', { heard }), entry('2026-11-25', { heard })]);
    expect(week).toMatchObject({ notes: 20, shares: { '3': 0.4, b7: 0.2 } });
  });

  it('has the tempos of each song, day by day', () => {
    const lap = { tempo: 96, choruses: 2, clean: 1, judged: 2 };
    const ladders = songLadders([
      entry('2026-11-24', { laps: [lap] }),
      entry('2026-11-24', { laps: [lap, { ...lap, tempo: 100 }] }),
      entry('2026-11-24', { kind: 'warm-up', laps: [lap] }),
    ]);
    expect(ladders).toEqual([
      {
        song: 'Wet Boots',
        choruses: 6,
        steps: [
          { day: '2026-11-24', tempo: 96, choruses: 4, clean: 2, judged: 4 },
          { day: '2026-11-24', tempo: 100, choruses: 2, clean: 1, judged: 2 },
        ],
      },
    ]);
  });
});
