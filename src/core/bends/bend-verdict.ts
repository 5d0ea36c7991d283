import type { Sound } from '../harp/harp';
import { asCents, asSeconds, type Cents, type Seconds } from '../theory/units';
import type { BendTask } from './bend-exercise';
import { findPlateaus, type PitchMoment, type Plateau, stretchesOf } from './plateaus';

/** What became of one try. Cents are from the target. */
export type BendVerdict =
  /** The target was held, or for a dip the pitch fell. */
  | {
      readonly kind: 'right' | 'flat' | 'sharp';
      readonly cents: Cents;
      /** How long it stood. */
      readonly held: Seconds;
      /** From the beginning, or from leaving the natural note, until it stood. */
      readonly settling: Seconds;
      /** The blue degree it is in place as, although a piano has it elsewhere; null where it is not. */
      readonly blue: 'third' | 'fifth' | 'seventh' | null;
    }
  /** The target was touched, not held. */
  | { readonly kind: 'short'; readonly held: Seconds }
  /** The pitch fell from the natural note by so many cents, and did not arrive. */
  | { readonly kind: 'dip'; readonly fall: Cents }
  /** Something else stood: the sounds of the harp it may have been, none where it has none there. */
  | { readonly kind: 'other'; readonly sounds: readonly Sound[] }
  /** It sounded, and never stood. */
  | { readonly kind: 'unsteady' }
  /** The target came, but not as the exercise has it. */
  | { readonly kind: 'shape'; readonly missing: 'start' | 'end' | 'cold' }
  | { readonly kind: 'nothing' };

/** True where a try counts as a hit: right, or in place as a blue note. */
export const isHit = (verdict: BendVerdict): boolean =>
  verdict.kind === 'right' ||
  ((verdict.kind === 'flat' || verdict.kind === 'sharp') && verdict.blue !== null);

/** How long the target has to stand, in seconds (by design, no source). */
const HOLD = { dip: 0, hold: 0.5, slide: 0.2, cold: 0.25, 'in and out': 0.15 } as const;
/** Farther from the target than this it is another note: no semitone is nearer to it. Cents. */
const ANOTHER = 60;
/** A sound of the harp is recognised within so many cents. */
const NAMED = 50;
/** Two sounds whose pitches differ by less are one pitch. */
const ALIKE = 35;
/** The natural note is there within so many cents: scoops and soft reeds lie below. */
const NATURAL = 40;
/** A fall of less is what breath does to any reed (common practice, no source). Cents. */
const LEAST_DIP = 30;
/** So many moments may be slips of the ear: 40 ms. */
const SLIPS = 8;
/** A note begun cold stands after so long (by design, no source: the ear itself needs a tenth). Seconds. */
const COLD = 0.3;
/** Less than this has not sounded at all: a click, a breath. Seconds. */
const SOUNDED = 0.08;

interface Trace {
  readonly moments: readonly PitchMoment[];
  readonly plateaus: readonly Plateau[];
}

const lengthOf = ({ from, to }: Plateau): number => to - from;

/** How far the pitch fell below the natural note and stayed for a moment, in cents. */
const fallOf = ({ moments }: Trace, natural: Cents | null): number => {
  if (natural === null) return 0;
  const falls = moments.map(({ cents }) => natural - cents).sort((a, b) => b - a);
  const fall = falls[Math.min(SLIPS, Math.floor(falls.length / 10))] ?? 0;
  return fall < natural + ANOTHER + 100 ? fall : 0;
};

const startsNatural = ({ plateaus, moments }: Trace, natural: Cents, before: number): boolean =>
  plateaus.some(({ to, cents }) => to <= before && Math.abs(cents - natural) <= NATURAL) ||
  moments.some(({ time, cents }) => time < before && Math.abs(cents - natural) <= NATURAL / 2);

const endsNatural = ({ moments }: Trace, natural: Cents, after: number): boolean =>
  moments.some(({ time, cents }) => time > after && Math.abs(cents - natural) <= NATURAL);

/** When the way to the target began: the last moment on the natural note before it, or the first of all. */
const leftAt = ({ moments }: Trace, natural: Cents | null, before: number): number =>
  (natural === null
    ? undefined
    : moments.findLast(({ time, cents }) => time < before && Math.abs(cents - natural) <= NATURAL)?.time) ??
  moments[0]?.time ??
  before;

const missingOf = (task: BendTask, trace: Trace, found: Plateau): 'start' | 'end' | 'cold' | null => {
  const { exercise, natural } = task;
  const begun = trace.moments[0]?.time ?? found.from;
  if (exercise === 'cold') {
    const came = natural !== null && startsNatural(trace, natural, found.from);
    return came || found.from - begun > COLD ? 'cold' : null;
  }
  if (natural === null || (exercise !== 'slide' && exercise !== 'in and out')) return null;
  if (!startsNatural(trace, natural, found.from)) return 'start';
  return exercise === 'in and out' && !endsNatural(trace, natural, found.to) ? 'end' : null;
};

/** Sounds of one pitch, which nothing tells apart but that the player is at this hole. */
const nearest = ({ sounds, target }: BendTask, cents: number): readonly Sound[] => {
  const near = sounds
    .map((each) => ({ sound: each.sound, off: Math.abs(each.cents - cents) }))
    .filter(({ off }) => off <= NAMED)
    .sort((a, b) => a.off - b.off);
  const best = near.filter(({ off }) => off - (near[0]?.off ?? 0) < ALIKE).map(({ sound }) => sound);
  const here = best.filter(({ hole, breath }) => hole === target.hole && breath === target.breath);
  // A natural note is the likelier by far where an overbend gives the same.
  const natural = best.filter(({ technique }) => technique === 'natural');
  return [here, natural].find((each) => each.length > 0) ?? best;
};

const elsewhere = (task: BendTask, trace: Trace): BendVerdict => {
  const { natural, target } = task;
  const longest = trace.plateaus.toSorted((a, b) => lengthOf(b) - lengthOf(a))[0];
  const fall = target.technique === 'bend' ? fallOf(trace, natural) : 0;
  const bentTo = longest && natural !== null ? natural - longest.cents : 0;
  // A bend that stands on another of its semitones is that note; one on the way is a dip.
  const onAnother =
    longest !== undefined &&
    Math.abs(bentTo - 100 * Math.round(bentTo / 100)) <= LEAST_DIP &&
    bentTo > NATURAL;
  if (fall >= LEAST_DIP && !onAnother) return { kind: 'dip', fall: asCents(fall) };
  if (longest === undefined) return { kind: 'unsteady' };
  return { kind: 'other', sounds: nearest(task, longest.cents) };
};

const judgeDip = (trace: Trace, natural: Cents | null): BendVerdict | null => {
  const fall = fallOf(trace, natural);
  if (fall < LEAST_DIP || natural === null) return null;
  return {
    kind: 'right',
    cents: asCents(natural - fall),
    held: asSeconds(0),
    settling: asSeconds(0),
    blue: null,
  };
};

const judgeHeld = (task: BendTask, trace: Trace, found: Plateau): BendVerdict => {
  const held = lengthOf(found);
  if (held < HOLD[task.exercise]) return { kind: 'short', held: asSeconds(held) };
  const missing = missingOf(task, trace, found);
  if (missing !== null) return { kind: 'shape', missing };
  const { cents } = found;
  const off = Math.abs(cents) > task.tolerance;
  const blue = off && task.blue !== null && cents >= task.blue.from && cents <= task.blue.to;
  return {
    kind: off ? (cents < 0 ? 'flat' : 'sharp') : 'right',
    cents: asCents(cents),
    held: asSeconds(held),
    settling: asSeconds(Math.max(0, found.from - leftAt(trace, task.natural, found.from))),
    blue: blue ? (task.blue?.name ?? null) : null,
  };
};

const seconds = (moments: readonly PitchMoment[]): number =>
  stretchesOf(moments).reduce((sum, each) => sum + (each.at(-1)?.time ?? 0) - (each[0]?.time ?? 0), 0);

/** The place on the target that stands long enough, then nearest; of two that are right, the longer. */
const placeOnTarget = ({ plateaus }: Trace, { tolerance, exercise }: BendTask): Plateau | undefined =>
  plateaus
    .filter(({ cents }) => Math.abs(cents) <= ANOTHER)
    .toSorted(
      (a, b) =>
        Number(lengthOf(b) >= HOLD[exercise]) - Number(lengthOf(a) >= HOLD[exercise]) ||
        Math.max(tolerance, Math.abs(a.cents)) - Math.max(tolerance, Math.abs(b.cents)) ||
        lengthOf(b) - lengthOf(a),
    )[0];

/**
 * What became of a try, from its voiced moments in the order of time. A pitch within 60 cents of the target is the
 * target, flat or sharp; nothing is said of a sound of less than 80 ms.
 */
export const judgeBend = (task: BendTask, moments: readonly PitchMoment[]): BendVerdict => {
  if (seconds(moments) < SOUNDED) return { kind: 'nothing' };
  const trace: Trace = { moments, plateaus: findPlateaus(moments) };
  if (task.exercise === 'dip') return judgeDip(trace, task.natural) ?? elsewhere(task, trace);
  const found = placeOnTarget(trace, task);
  return found === undefined ? elsewhere(task, trace) : judgeHeld(task, trace, found);
};
