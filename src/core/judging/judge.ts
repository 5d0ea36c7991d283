/** Heard against asked: what became of every note of a phrase, and of the whole. */
import { align, centsFrom, IN_TEMPO, isPassing, type Pair, type TimeMap } from './align';
import type { AskedNote, PlayedNote } from './asked-notes';
import { markOf } from './mark';
import { timeMapOf } from './time-map';

/** How a note's pitch was; `other` is another note, `missed` none. */
export type PitchVerdict = 'right' | 'flat' | 'sharp' | 'other' | 'missed';

/** What became of one note that was asked for. */
export interface NoteVerdict {
  readonly asked: AskedNote;
  /** Null where it is missing. */
  readonly played: PlayedNote | null;
  readonly pitch: PitchVerdict;
  /** From the nearest pitch asked for; 0 where the note is missing. */
  readonly cents: number;
  readonly time: 'early' | 'on time' | 'late';
  /** Seconds after it was due, the player's own lean, start and tempo taken off. */
  readonly late: number;
  /** Left long before its end. */
  readonly short: boolean;
}

/** What became of everything that was asked for, and what came besides. */
export interface Judgement {
  readonly notes: readonly NoteVerdict[];
  /** Notes that nobody asked for. */
  readonly extras: readonly PlayedNote[];
  /** How far behind the band as a rule, in seconds, below 0 ahead; the start apart. */
  readonly lean: number;
  /** Seconds the whole began after it was due; 0 unless it is more than a lean. */
  readonly start: number;
  /** Time taken over time asked for: 0.5 is twice as fast. 1 unless it is clearly another. */
  readonly rate: number;
  /** 0–100, as `mark.ts` says: a further fault never raises it. */
  readonly mark: number;
}

/** What is let pass: the player's level. */
export interface Tolerance {
  /** Cents either way. */
  readonly cents: number;
  /** Seconds either way. */
  readonly seconds: number;
}

/**
 * What passes by level. Listeners call sung notes out of tune from about 25 cents (Music & Science 1, 2018, doi
 * 10.1177/2059204318784582), and 50 is half-way to the next key; 50 ms is the onset tolerance of `mir_eval`.
 */
export const TOLERANCES: readonly Tolerance[] = [
  { cents: 50, seconds: 0.08 },
  { cents: 35, seconds: 0.06 },
  { cents: 25, seconds: 0.05 },
];

/** Farther away a note counts as another one; a bend that does not come all the way is still that bend. Cents. */
const OTHER = { natural: 70, bend: 150 } as const;
/** A lean is at most this; what is more is a late start. Seconds. */
const MOST_LEAN = 0.06;
const LATE_START = 0.2;
/** A tempo counts as another one from this share on; less is within a player's own sway. */
const OTHER_RATE = 0.15;
/** A note shorter than this share of its length, and by more than this many seconds, was left early. */
const SHORT = { share: 0.55, seconds: 0.1 } as const;

/** What faults take from a note's worth of 1. */
const TAKES = { cents: 0.55, time: 0.25, short: 0.1 } as const;
/** What costs nothing, and from where on the whole of it is taken: cents and seconds. */
const FREE = { cents: 10, seconds: 0.02 } as const;
const WHOLE = { cents: 100, seconds: 0.2 } as const;

/** How much of a fault there is, from 0 where it is free to 1. */
const share = (amount: number, free: number, whole: number): number =>
  Math.max(0, Math.min(1, (amount - free) / (whole - free)));

/** Cents from which on a note is another one than was asked. */
const otherFrom = ({ sound }: AskedNote, tolerance: Tolerance): number =>
  Math.max(sound.technique === 'bend' ? OTHER.bend : OTHER.natural, tolerance.cents);

const pitchVerdict = (asked: AskedNote, cents: number, tolerance: Tolerance): PitchVerdict => {
  const distance = Math.abs(cents);
  if (distance <= tolerance.cents) return 'right';
  if (distance > otherFrom(asked, tolerance)) return 'other';
  return cents < 0 ? 'flat' : 'sharp';
};

const MISSED = { played: null, pitch: 'missed', cents: 0, time: 'on time', late: 0, short: false } as const;

/** Whether a note was left long before its end. */
const isShort = (asked: AskedNote, played: PlayedNote, rate: number): boolean => {
  const wanted = asked.length * rate;
  return played.length < SHORT.share * wanted && wanted - played.length > SHORT.seconds;
};

/** The player's time as it is forgiven: a lean where it is small, a start or a tempo of their own where it is not. */
const forgiven = ({ offset, rate }: TimeMap): Pick<Judgement, 'lean' | 'start' | 'rate'> => {
  const own = Math.abs(rate - 1) >= OTHER_RATE ? rate : 1;
  if (own !== 1 || Math.abs(offset) >= LATE_START) return { lean: 0, start: offset, rate: own };
  return { lean: Math.max(-MOST_LEAN, Math.min(MOST_LEAN, offset)), start: 0, rate: 1 };
};

const verdictOf = (
  asked: AskedNote,
  played: PlayedNote | null,
  time: TimeMap,
  tolerance: Tolerance,
): NoteVerdict => {
  if (played === null) return { asked, ...MISSED };
  const cents = centsFrom(asked.pitches, played.pitch);
  const late = played.at - (time.offset + time.rate * asked.at);
  return {
    asked,
    played,
    pitch: pitchVerdict(asked, cents, tolerance),
    cents,
    late,
    time: Math.abs(late) <= tolerance.seconds + 1e-9 ? 'on time' : late < 0 ? 'early' : 'late',
    short: isShort(asked, played, time.rate),
  };
};

/** What a note keeps of its worth of 1: measured against the band's time, forgiving nothing. Another note keeps none. */
const worth = (asked: AskedNote, played: PlayedNote, tolerance: Tolerance): number => {
  const cents = Math.abs(centsFrom(asked.pitches, played.pitch));
  if (cents > otherFrom(asked, tolerance)) return 0;
  const pitchTakes = TAKES.cents * share(cents, FREE.cents, WHOLE.cents);
  const timeTakes = TAKES.time * share(Math.abs(played.at - asked.at), FREE.seconds, WHOLE.seconds);
  return 1 - pitchTakes - timeTakes - (isShort(asked, played, IN_TEMPO.rate) ? TAKES.short : 0);
};

const alignTwice = (
  asked: readonly AskedNote[],
  played: readonly PlayedNote[],
): { readonly pairs: readonly Pair[]; readonly map: TimeMap } => {
  const first = align(asked, played, IN_TEMPO);
  const own = timeMapOf(first, asked, played);
  const pairs = align(asked, played, own);
  return { pairs, map: timeMapOf(pairs, asked, played) };
};

/**
 * Judges notes heard, in order of time, against notes asked for: aligned once by the band's time and once more by the
 * player's own, as `align.ts` and `time-map.ts` say.
 */
export const judge = (
  asked: readonly AskedNote[],
  played: readonly PlayedNote[],
  tolerance: Tolerance,
): Judgement => {
  const { pairs, map } = alignTwice(asked, played);
  const own = forgiven(map);
  const time: TimeMap = { offset: own.lean + own.start, rate: own.rate };
  const notes = pairs.flatMap((pair): readonly NoteVerdict[] => {
    const want = pair.asked === null ? undefined : asked[pair.asked];
    const note = pair.played === null ? null : (played[pair.played] ?? null);
    return want === undefined ? [] : [verdictOf(want, note, time, tolerance)];
  });
  const isPart = (note: PlayedNote): boolean => asked.some((want) => isPassing(want, note, time));
  const extras = pairs
    .flatMap((pair) => (pair.asked === null ? (played[pair.played] ?? []) : []))
    .filter((note) => !isPart(note));
  const mark = markOf(asked, played, {
    isPart,
    worth: (want, note) => worth(want, note, tolerance),
  });
  return { notes, extras, ...own, mark };
};
