/**
 * How an entry of the log comes about: a pure function takes what happens, one thing after another, to the entry that is
 * open. Whatever has changed it is to be written at once, so that no more than the bar being played can be lost.
 */
import { asEpochMs, type EpochMs } from '../theory/units';
import {
  addBends,
  addHeard,
  addLaps,
  addPhrases,
  type BendSum,
  type HeardFigures,
  type LogEntry,
  type LogFacts,
  NOTHING_HEARD,
  type PhraseSum,
} from './log-entry';

/** Something that happens while one practises. Times are of the wall clock. */
export type LogEvent =
  | {
      readonly kind: 'began';
      readonly at: EpochMs;
      readonly id: string;
      /** By the player's own clock: `2026-11-25`. */
      readonly day: string;
      readonly facts: LogFacts;
    }
  /** A bar begins. `chorus` is null in count-ins, intros and endings; `last` says that it is the last of its chorus. */
  | {
      readonly kind: 'bar';
      readonly at: EpochMs;
      readonly chorus: number | null;
      readonly last: boolean;
      readonly tempo: number;
    }
  /** What was heard of a chorus that is over; `clean` is null where it was no whole one, or too little was heard. */
  | {
      readonly kind: 'judged';
      readonly tempo: number;
      readonly clean: boolean | null;
      readonly heard: HeardFigures | null;
      readonly bends: readonly BendSum[];
    }
  | { readonly kind: 'bend'; readonly at: EpochMs; readonly sum: BendSum }
  | { readonly kind: 'phrase'; readonly sum: PhraseSum }
  /** It goes on without sounding, or sounds again. */
  | { readonly kind: 'paused' | 'resumed'; readonly at: EpochMs }
  | { readonly kind: 'ended'; readonly at: EpochMs };

/** The entry that is being written. */
export interface OpenEntry {
  readonly entry: LogEntry;
  /** When it was last known to sound; null while it does not. */
  readonly since: EpochMs | null;
  /** The bar that sounds. */
  readonly bar: { readonly chorus: number | null; readonly last: boolean; readonly tempo: number } | null;
}

/** What an event came to. */
export interface LogStep {
  readonly open: OpenEntry | null;
  /** The entry as it is to be written now; null where nothing has changed that is worth it. */
  readonly write: LogEntry | null;
}

/**
 * Longest stretch between two events that is believed, in seconds: a bar of the slowest song is shorter, and a machine
 * that slept did not play.
 */
const LONGEST_STRETCH = 30;

/** An entry shorter than this, in seconds, is a wrong press and no practice. */
const SHORTEST_ENTRY = 4;

const emptyEntry = ({ id, at, day, facts }: Extract<LogEvent, { kind: 'began' }>): LogEntry => ({
  ...facts,
  id,
  began: at,
  day,
  choruses: 0,
  seconds: 0,
  laps: [],
  heard: null,
  bends: [],
  phrases: [],
});

/** Lets the time until now count. */
const until = (open: OpenEntry, at: EpochMs): OpenEntry => {
  if (open.since === null) return open;
  const seconds = Math.min(LONGEST_STRETCH, Math.max(0, (at - open.since) / 1000));
  return {
    ...open,
    since: asEpochMs(Math.max(at, open.since)),
    entry: { ...open.entry, seconds: open.entry.seconds + seconds },
  };
};

/** Counts the chorus whose last bar has sounded. */
const withChorus = (open: OpenEntry): OpenEntry => {
  const { bar, entry } = open;
  if (bar?.chorus == null || !bar.last) return open;
  const lap = { tempo: Math.round(bar.tempo), choruses: 1, clean: 0, judged: 0 };
  return {
    ...open,
    bar: null,
    entry: { ...entry, choruses: entry.choruses + 1, laps: addLaps(entry.laps, [lap]) },
  };
};

const withBar = (open: OpenEntry, event: Extract<LogEvent, { kind: 'bar' }>): OpenEntry => {
  const timed = until(open, event.at);
  // The same bar told again is the same bar, and a chorus that goes on from its last bar to its first was one.
  const same = timed.bar?.chorus === event.chorus && timed.bar.last && event.last;
  const counted = same ? timed : withChorus(timed);
  const { chorus, last, tempo } = event;
  return { ...counted, since: counted.since ?? event.at, bar: { chorus, last, tempo } };
};

const withResult = (entry: LogEntry, event: LogEvent): LogEntry => {
  if (event.kind === 'judged') {
    const lap = { tempo: Math.round(event.tempo), choruses: 0, clean: event.clean ? 1 : 0, judged: 1 };
    return {
      ...entry,
      laps: event.clean === null ? entry.laps : addLaps(entry.laps, [lap]),
      heard: event.heard === null ? entry.heard : addHeard(entry.heard ?? NOTHING_HEARD, event.heard),
      bends: addBends(entry.bends, event.bends),
    };
  }
  if (event.kind === 'phrase') return { ...entry, phrases: addPhrases(entry.phrases, [event.sum]) };
  return event.kind === 'bend' ? { ...entry, bends: addBends(entry.bends, [event.sum]) } : entry;
};

const isWorthKeeping = ({ seconds, choruses, bends, phrases, heard }: LogEntry): boolean =>
  seconds >= SHORTEST_ENTRY || choruses > 0 || bends.length > 0 || phrases.length > 0 || heard !== null;

const written = (open: OpenEntry | null, was: OpenEntry): LogStep => {
  const entry = (open ?? was).entry;
  return { open, write: isWorthKeeping(entry) ? entry : null };
};

/**
 * What an event does to the open entry. What happens while none is open is no entry's and changes nothing; one that
 * begins while another is open ends that one first.
 */
export const logStep = (open: OpenEntry | null, event: LogEvent): LogStep => {
  if (event.kind === 'began') {
    const before = open === null ? null : logStep(open, { kind: 'ended', at: event.at });
    return { open: { entry: emptyEntry(event), since: null, bar: null }, write: before?.write ?? null };
  }
  if (open === null) return { open, write: null };
  switch (event.kind) {
    case 'bar': {
      const next = withBar(open, event);
      return written(next, next);
    }
    case 'ended': {
      const over = withChorus(until(open, event.at));
      return written(null, over);
    }
    case 'paused': {
      const next = { ...until(open, event.at), since: null };
      return written(next, next);
    }
    case 'resumed':
      return { open: { ...open, since: event.at }, write: null };
    case 'bend': {
      const timed = until({ ...open, since: open.since ?? event.at }, event.at);
      const next = { ...timed, entry: withResult(timed.entry, event) };
      return written(next, next);
    }
    default: {
      const next = { ...open, entry: withResult(open.entry, event) };
      return written(next, next);
    }
  }
};
