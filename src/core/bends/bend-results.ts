/** What is kept of tries at bends, and what it says. */
import * as v from 'valibot';
import type { Harp } from '../harp/harp';
import { asCents, asSeconds, type Cents, type Seconds } from '../theory/units';
import { EXERCISES, type Exercise } from './bend-exercise';
import { type BendVerdict, isHit } from './bend-verdict';

/** A try, as it is kept. */
export interface BendTry {
  readonly exercise: Exercise;
  readonly hit: boolean;
  /** From the target; null where nothing stood on it, and where the player marked it. */
  readonly cents: Cents | null;
  /** Until it stood; null as above. */
  readonly settling: Seconds | null;
  /** Marked by the player, not heard. */
  readonly marked: boolean;
}

/** The tries at one sound of one kind of harp. */
export interface BendResults {
  /** Kind and sound: `C4 richter-reeds 4D'`. */
  readonly id: string;
  /** The sound, as `soundId` writes it. */
  readonly name: string;
  readonly kind: string;
  /** The latest, oldest first. */
  readonly tries: readonly BendTry[];
}

/** Tries kept of a sound: older ones tell nothing of today. */
const KEPT = 40;

/** Bends depend on the reeds and on how high they are: harps of one kind have the same notes. */
export const harpKind = ({ key, octave, tuning }: Pick<Harp, 'key' | 'octave' | 'tuning'>): string =>
  [key, octave, tuning.blow.join(','), tuning.draw.join(',')].join(' ');

/** Empty results of a sound on a kind of harp. */
export const noResults = (kind: string, sound: string): BendResults => ({
  id: `${kind} ${sound}`,
  name: sound,
  kind,
  tries: [],
});

/** The try a verdict comes to; null where nothing was heard, which is no try. */
export const tryOf = (exercise: Exercise, verdict: BendVerdict): BendTry | null => {
  if (verdict.kind === 'nothing') return null;
  const stood = verdict.kind === 'right' || verdict.kind === 'flat' || verdict.kind === 'sharp';
  const measured = stood && exercise !== 'dip';
  return {
    exercise,
    hit: isHit(verdict),
    cents: measured ? verdict.cents : null,
    settling: measured ? verdict.settling : null,
    marked: false,
  };
};

/** With one try more. */
export const withTry = (results: BendResults, made: BendTry): BendResults => ({
  ...results,
  tries: [...results.tries, made].slice(-KEPT),
});

const isSameTry = (a: BendTry | undefined, b: BendTry): boolean =>
  JSON.stringify([a?.exercise, a?.hit, a?.cents, a?.settling, a?.marked]) ===
  JSON.stringify([b.exercise, b.hit, b.cents, b.settling, b.marked]);

/** Whether a row of tries stands somewhere within another. */
const standsIn = (part: readonly BendTry[], whole: readonly BendTry[]): boolean =>
  whole.some((_, from) => part.every((each, i) => isSameTry(whole[from + i], each))) || part.length === 0;

/** How many of the last tries of one row are the first of the other. */
const overlap = (earlier: readonly BendTry[], later: readonly BendTry[]): number => {
  for (let count = Math.min(earlier.length, later.length); count > 0; count -= 1) {
    if (earlier.slice(-count).every((each, i) => isSameTry(later[i], each))) return count;
  }
  return 0;
};

/**
 * Tries at the same sound from two places: those that came from elsewhere count as the earlier ones, and what both have
 * counts once. Joined once more with either it stays as it is.
 */
export const joinResults = (present: BendResults, incoming: BendResults): BendResults => {
  if (standsIn(incoming.tries, present.tries)) return present;
  if (standsIn(present.tries, incoming.tries)) return incoming;
  const shared = overlap(incoming.tries, present.tries);
  return { ...present, tries: [...incoming.tries, ...present.tries.slice(shared)].slice(-KEPT) };
};

/** How far a player has come with a sound. */
export const STANDINGS = ['steady', 'coming', 'not yet'] as const;
export type Standing = (typeof STANDINGS)[number];

/** What tries come to. */
export interface BendFigures {
  readonly tries: number;
  readonly hits: number;
  readonly marked: number;
  /** Mean and spread (standard deviation) of the cents that stood; null with fewer than two. */
  readonly cents: { readonly mean: Cents; readonly spread: Cents } | null;
  /** Median time to settle; null without any. */
  readonly settling: Seconds | null;
  /** Null with too few tries to say. */
  readonly standing: Standing | null;
}

/**
 * The latest tries that count, and how many are needed; the shares of hits from which a sound is steady or coming. Five
 * in a row is what motor studies call a criterion (doi 10.1016/j.humov.2021.102850); the shares are by design.
 */
const STAND = { last: 10, least: 5, steady: 0.8, coming: 0.3 } as const;

const standingOf = (tries: readonly BendTry[]): Standing | null => {
  const last = tries.slice(-STAND.last);
  if (last.length < STAND.least) return null;
  const share = last.filter(({ hit }) => hit).length / last.length;
  if (share >= STAND.steady) return 'steady';
  return share >= STAND.coming ? 'coming' : 'not yet';
};

const spreadOf = (cents: readonly number[]): BendFigures['cents'] => {
  if (cents.length < 2) return null;
  const mean = cents.reduce((sum, each) => sum + each, 0) / cents.length;
  const square = cents.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (cents.length - 1);
  return { mean: asCents(mean), spread: asCents(Math.sqrt(square)) };
};

/** The figures of a sound. Dips are a way to a bend, and tell nothing of its pitch: they are counted apart from it. */
export const figuresOf = ({ tries }: Pick<BendResults, 'tries'>): BendFigures => {
  const onPitch = tries.filter(({ exercise }) => exercise !== 'dip');
  const settled = onPitch.flatMap(({ settling }) => settling ?? []).sort((a, b) => a - b);
  return {
    tries: onPitch.length,
    hits: onPitch.filter(({ hit }) => hit).length,
    marked: onPitch.filter(({ marked }) => marked).length,
    cents: spreadOf(onPitch.flatMap(({ cents }) => cents ?? [])),
    settling: settled[Math.floor(settled.length / 2)] ?? null,
    standing: standingOf(onPitch),
  };
};

const figure = (low: number, high: number) =>
  v.nullable(v.pipe(v.number(), v.minValue(low), v.maxValue(high)));
const TRY = v.object({
  exercise: v.picklist(EXERCISES),
  hit: v.boolean(),
  cents: v.pipe(
    figure(-1200, 1200),
    v.transform((cents) => (cents === null ? null : asCents(cents))),
  ),
  settling: v.pipe(
    figure(0, 60),
    v.transform((seconds) => (seconds === null ? null : asSeconds(seconds))),
  ),
  marked: v.boolean(),
});
const RESULTS = v.object({
  name: v.pipe(v.string(), v.regex(/^\d{1,2}O?[BD]'{0,9}$/)),
  kind: v.pipe(v.string(), v.minLength(1), v.maxLength(300)),
  tries: v.array(v.unknown()),
});

/** Reads kept results. Never throws: tries that cannot be read are left out and counted. */
export const parseBendResults = (
  value: unknown,
): { readonly item: BendResults | null; readonly problems: readonly string[] } => {
  const read = v.safeParse(RESULTS, value);
  if (!read.success) {
    return { item: null, problems: ['Kept results of a bend name no sound of a harp and were left out.'] };
  }
  const { name, kind, tries } = read.output;
  const good = tries.flatMap((each) => {
    const made = v.safeParse(TRY, each);
    return made.success ? [made.output] : [];
  });
  const lost = tries.length - good.length;
  return {
    item: { ...noResults(kind, name), tries: good.slice(-KEPT) },
    problems:
      lost === 0 ? [] : [`Of the kept tries at ${name}, ${lost} could not be read and were left out.`],
  };
};
