/**
 * Heard notes laid against asked ones: the cheapest way to match, leave out and add notes in order, as sequences are
 * aligned since Needleman and Wunsch (J. Mol. Biol. 48, 1970; from memory), with time among the costs, because pitch
 * and order alone go astray on ornaments and changes of tempo ("Improved score-performance matching using both
 * structural and temporal information"). Costs in units of a semitone.
 */
import type { AskedNote, PlayedNote } from './asked-notes';

/** What a step of the alignment costs; the figures are ours, tried on the synthetic players of the tests. */
const COST = {
  /** A semitone costs 1, no pitch more than this. */
  worstPitch: 1.5,
  /** The right note in another octave. */
  octave: 0.4,
  /** A note late or early by half of the time to the next, and more. */
  worstTime: 0.5,
  wrongBreath: 0.2,
  missed: 1,
  extra: 0.8,
  /** Shorter than `GRAZED`. */
  graze: 0.4,
  /** What belongs to a shake, a slide or a curve. */
  passing: 0.1,
  /** Beginning again: whatever came before costs no more than this. */
  restart: 2,
} as const;

/** Seconds below which a note is grazed more than played (common practice, no source). */
export const GRAZED = 0.08;

/** Cents within which a passing note is known: half a semitone, and the width of a blue note's band. */
const PASSING_CENTS = 70;

/** How the player's time lies over the asked one: `played = offset + rate × asked`. */
export interface TimeMap {
  /** Seconds. */
  readonly offset: number;
  /** 1 in tempo, below 1 faster. */
  readonly rate: number;
}

export const IN_TEMPO: TimeMap = { offset: 0, rate: 1 };

/** A pair of indices; `asked` null for a note that was added, `played` null for one that is missing. */
export type Pair =
  | { readonly asked: number; readonly played: number }
  | { readonly asked: number; readonly played: null }
  | { readonly asked: null; readonly played: number };

/** Cents from the nearest pitch that is asked for, above it positive. */
export const centsFrom = (pitches: readonly number[], pitch: number): number =>
  pitches
    .map((each) => 100 * (pitch - each))
    .reduce((best, each) => (Math.abs(each) < Math.abs(best) ? each : best), Number.POSITIVE_INFINITY);

const fromOctave = (cents: number): number => Math.abs(cents - 1200 * Math.round(cents / 1200));

const pitchCost = (asked: AskedNote, { pitch }: PlayedNote): number => {
  const cents = centsFrom(asked.pitches, pitch);
  if (Math.abs(cents) > 600 && fromOctave(cents) < PASSING_CENTS) return COST.octave;
  return Math.min(Math.abs(cents) / 100, COST.worstPitch);
};

const matchCost = (asked: AskedNote, played: PlayedNote, time: TimeMap, gap: number): number => {
  const late = played.at - (time.offset + time.rate * asked.at);
  const breath =
    played.sounds.length > 0 && played.sounds.every(({ breath }) => breath !== asked.sound.breath);
  return (
    pitchCost(asked, played) +
    COST.worstTime * Math.min(1, Math.abs(late) / (0.5 * gap * time.rate)) +
    (breath ? COST.wrongBreath : 0)
  );
};

/** Whether a note belongs to how an asked one is played: a shake, a slide, a curve, or a hole sounding with it. */
export const isPassing = (asked: AskedNote, played: PlayedNote, { offset, rate }: TimeMap): boolean => {
  const from = offset + rate * asked.at;
  const within = played.at >= from - 0.15 && played.at <= from + rate * asked.length + 0.05;
  const also = [
    ...asked.passing,
    ...(asked.passing.length > 0 || asked.pitches.length > 1 ? asked.pitches : []),
  ];
  return within && Math.abs(centsFrom(also, played.pitch)) <= PASSING_CENTS;
};

const extraCost = (asked: readonly AskedNote[], played: PlayedNote, time: TimeMap): number => {
  if (asked.some((each) => isPassing(each, played, time))) return COST.passing;
  return played.length < GRAZED ? COST.graze : COST.extra;
};

/** Seconds from each asked note to the next; from the last one its own length. */
const gapsOf = (asked: readonly AskedNote[]): readonly number[] =>
  asked.map(({ at, length }, i) => Math.max(0.05, (asked[i + 1]?.at ?? at + length) - at));

type Step = 'match' | 'missed' | 'extra' | 'start';

interface Cell {
  readonly cost: number;
  readonly step: Step;
}

/** The cheaper of two, the first where they are alike. */
const cheaper = (a: Cell, b: Cell): Cell => (b.cost < a.cost ? b : a);

const follow = (table: readonly (readonly Cell[])[], played: number, asked: number): readonly Pair[] => {
  const pairs: Pair[] = [];
  let [row, column] = [played, asked];
  while (row > 0 || column > 0) {
    const step = table[row]?.[column]?.step ?? 'start';
    if (step === 'missed') {
      column -= 1;
      pairs.push({ asked: column, played: null });
    } else {
      row -= 1;
      if (step === 'match') column -= 1;
      pairs.push(step === 'match' ? { asked: column, played: row } : { asked: null, played: row });
    }
  }
  return pairs.toReversed();
};

/** Lays notes heard, in order of time, against notes asked for. Every note of both is in one pair. */
export const align = (
  asked: readonly AskedNote[],
  played: readonly PlayedNote[],
  time: TimeMap,
): readonly Pair[] => {
  const gaps = gapsOf(asked);
  const table: Cell[][] = [[{ cost: 0, step: 'start' }]];
  const at = (row: number, column: number): number => table[row]?.[column]?.cost ?? Number.POSITIVE_INFINITY;
  for (let column = 1; column <= asked.length; column += 1)
    table[0]?.push({ cost: column * COST.missed, step: 'missed' });
  for (const [i, note] of played.entries()) {
    const extra = extraCost(asked, note, time);
    const row: Cell[] = [{ cost: Math.min(at(i, 0) + extra, COST.restart), step: 'extra' }];
    table.push(row);
    for (const [j, want] of asked.entries()) {
      const match: Cell = {
        cost: at(i, j) + matchCost(want, note, time, gaps[j] ?? 1),
        step: 'match',
      };
      const missed: Cell = { cost: at(i + 1, j) + COST.missed, step: 'missed' };
      row.push(cheaper(cheaper(match, missed), { cost: at(i, j + 1) + extra, step: 'extra' }));
    }
  }
  return follow(table, played.length, asked.length);
};
