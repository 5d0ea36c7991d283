/**
 * Makes a held sound go on for as long as it is asked to: a stretch of it is repeated whose end goes over into its
 * beginning where the two are most alike, so that vibrato and beating pass through without a step.
 */
import { LOOP_GUARD } from '../synthesis/loop';

/** A rendering of a note that is still held at its end. */
export interface HeldSound {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  /** Pitch of the sound; the loop holds whole turns of it. */
  readonly hz: number;
}

/** A sound that can be held for ever: frames of its loop, the end not included. */
export interface LoopedSound {
  readonly samples: Float32Array;
  readonly loop: { readonly from: number; readonly to: number };
}

/** Seconds at which the loop begins, of its shortest and longest length, and of the way its end goes over. */
const FROM = 0.9;
const SHORTEST = 1.2;
const LONGEST = 2.4;
const CROSSING = 0.12;
/** Seconds a sound must last to be looped. */
export const LOOPABLE_SECONDS = FROM + LONGEST + 0.1;
/** Points looked at when two stretches are compared. */
const COMPARED = 600;

/** How alike the stretches of `length` before two places are, −1 to 1. */
const likeness = (samples: Float32Array, one: number, other: number, length: number): number => {
  const step = Math.max(1, Math.floor(length / COMPARED));
  let [both, first, second] = [0, 0, 0];
  for (let i = 1; i <= length; i += step) {
    const a = samples[one - i] ?? 0;
    const b = samples[other - i] ?? 0;
    both += a * b;
    first += a * a;
    second += b * b;
  }
  const power = Math.sqrt(first * second);
  return power > 0 ? both / power : 0;
};

/** Goes from one sound over into another without a dip or a bump, however alike the two are. */
const crossed = (from: number, to: number, share: number, alike: number): number => {
  const stay = 1 - share;
  const power = stay * stay + share * share + 2 * stay * share * Math.max(0, alike);
  return (from * stay + to * share) / Math.sqrt(power);
};

/** Loops a sound of at least `LOOPABLE_SECONDS`. Throws RangeError when it is shorter. */
export const loopHeld = ({ samples, sampleRate, hz }: HeldSound): LoopedSound => {
  if (samples.length < LOOPABLE_SECONDS * sampleRate)
    throw new RangeError(`a loop needs ${LOOPABLE_SECONDS} s, got ${samples.length / sampleRate}`);
  const from = Math.round(FROM * sampleRate);
  const crossing = Math.round(CROSSING * sampleRate);
  let [to, best] = [from + Math.round(SHORTEST * sampleRate), Number.NEGATIVE_INFINITY];
  for (let turns = Math.ceil(SHORTEST * hz); turns <= LONGEST * hz; turns += 1) {
    const end = from + Math.round((turns * sampleRate) / hz);
    const alike = likeness(samples, from, end, crossing);
    if (alike > best) [to, best] = [end, alike];
  }
  const out = samples.slice(0, to + LOOP_GUARD);
  for (let i = 0; i < crossing; i += 1) {
    const share = (i + 1) / crossing;
    out[to - crossing + i] = crossed(
      samples[to - crossing + i] ?? 0,
      samples[from - crossing + i] ?? 0,
      share,
      best,
    );
  }
  out.set(samples.subarray(from, from + LOOP_GUARD), to);
  return { samples: out, loop: { from, to } };
};
