/** What is written down of a song that was played, of bends that were practised, of a warm-up. */
import type { EpochMs } from '../theory/units';

/** What an entry is of. */
export const LOG_KINDS = ['song', 'bends', 'warm-up', 'drill'] as const;
export type LogKind = (typeof LOG_KINDS)[number];

/** What was played: known when it begins. */
export interface LogFacts {
  readonly kind: LogKind;
  /** The song's name in the book, or what its files would be called. */
  readonly song: string;
  /** The form's or chart's name. */
  readonly form: string;
  /** As written, ASCII: `Bb`, `A minor`. */
  readonly key: string;
  /** `C harp`, ASCII. */
  readonly harp: string;
  /** The harp by its notes, as bend results are kept under. */
  readonly harpKind: string;
  /** 1–12. */
  readonly position: number;
}

/** Choruses at one tempo. */
export interface Lap {
  /** Beats a minute, whole. */
  readonly tempo: number;
  readonly choruses: number;
  /** How many of them the ear or the player found clean. */
  readonly clean: number;
  /** How many of them were judged at all. */
  readonly judged: number;
}

/** Tries at one bend or overbend. Sums, so that entries add up: mean and spread follow from them. */
export interface BendSum {
  /** As `soundId` writes it: `4D'`. */
  readonly sound: string;
  readonly tries: number;
  readonly hits: number;
  /** How many of the tries have cents. */
  readonly measured: number;
  /** Sum of cents from the target, and of their squares. */
  readonly cents: number;
  readonly squares: number;
}

/** Calls answered, or phrases played, under one name. */
export interface PhraseSum {
  readonly name: string;
  readonly tries: number;
  readonly passed: number;
}

/** What the ear heard, in counts. */
export interface HeardFigures {
  /** Notes that were judged against their chord. */
  readonly notes: number;
  /** Of those: of the chord, blue, of the scale. The rest was none of these. */
  readonly chord: number;
  readonly blue: number;
  readonly scale: number;
  /** Chord tones hit, by their degree: `3`, `b7`. */
  readonly functions: Readonly<Record<string, number>>;
  /** Notes judged against the beat, and how many of them came early or late. */
  readonly timed: number;
  readonly early: number;
  readonly late: number;
}

/** A song played through, a warm-up, a run of bends: one stretch of practice with what was heard of it. */
export interface LogEntry extends LogFacts {
  readonly id: string;
  readonly began: EpochMs;
  /** The day by the player's own clock: `2026-11-25`. */
  readonly day: string;
  /** Whole choruses. */
  readonly choruses: number;
  /** Seconds for which it sounded. */
  readonly seconds: number;
  /** The choruses by tempo, in the order they were first played at. */
  readonly laps: readonly Lap[];
  /** Null where nothing was listened to. */
  readonly heard: HeardFigures | null;
  readonly bends: readonly BendSum[];
  readonly phrases: readonly PhraseSum[];
}

/** Nothing heard yet. */
export const NOTHING_HEARD: HeardFigures = {
  notes: 0,
  chord: 0,
  blue: 0,
  scale: 0,
  functions: {},
  timed: 0,
  early: 0,
  late: 0,
};

/** Both counts together. */
export const addHeard = (a: HeardFigures, b: HeardFigures): HeardFigures => {
  const functions: Record<string, number> = { ...a.functions };
  for (const [degree, count] of Object.entries(b.functions))
    functions[degree] = (functions[degree] ?? 0) + count;
  return {
    notes: a.notes + b.notes,
    chord: a.chord + b.chord,
    blue: a.blue + b.blue,
    scale: a.scale + b.scale,
    functions,
    timed: a.timed + b.timed,
    early: a.early + b.early,
    late: a.late + b.late,
  };
};

/** The sums with others added, each under its name. */
const addUnder = <Sum>(
  sums: readonly Sum[],
  more: readonly Sum[],
  nameOf: (sum: Sum) => string,
  add: (a: Sum, b: Sum) => Sum,
): readonly Sum[] => {
  const all = new Map(sums.map((sum) => [nameOf(sum), sum]));
  for (const sum of more) {
    const known = all.get(nameOf(sum));
    all.set(nameOf(sum), known === undefined ? sum : add(known, sum));
  }
  return [...all.values()];
};

/** Tries at bends, sound by sound. */
export const addBends = (a: readonly BendSum[], b: readonly BendSum[]): readonly BendSum[] =>
  addUnder(
    a,
    b,
    ({ sound }) => sound,
    (one, other) => ({
      sound: one.sound,
      tries: one.tries + other.tries,
      hits: one.hits + other.hits,
      measured: one.measured + other.measured,
      cents: one.cents + other.cents,
      squares: one.squares + other.squares,
    }),
  );

/** Phrases, name by name. */
export const addPhrases = (a: readonly PhraseSum[], b: readonly PhraseSum[]): readonly PhraseSum[] =>
  addUnder(
    a,
    b,
    ({ name }) => name,
    (one, other) => ({
      name: one.name,
      tries: one.tries + other.tries,
      passed: one.passed + other.passed,
    }),
  );

/** Laps, tempo by tempo. */
export const addLaps = (a: readonly Lap[], b: readonly Lap[]): readonly Lap[] =>
  addUnder(
    a,
    b,
    ({ tempo }) => String(tempo),
    (one, other) => ({
      tempo: one.tempo,
      choruses: one.choruses + other.choruses,
      clean: one.clean + other.clean,
      judged: one.judged + other.judged,
    }),
  );
