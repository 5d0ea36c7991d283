import { meanSquare } from '../signal/mean-square';
import type { RecentPower } from '../signal/recent-power';
import type { PitchEvidence } from './pitch-evidence';
import type { PitchPath } from './pitch-path';

/**
 * Evidence that no pitch at all has, of the same kind as that of pitches: where there is sound, where it may be no more
 * than what is left of the band, and below the gate.
 */
export const NO_PITCH = { sound: 0.2, residue: 1.2, silence: 10 } as const;
/** Costs in units of evidence, as tried on generated takes: of gliding by 0, 20, 40 … cents in a hop, and of leaps. */
export const COSTS = { moves: [0, 0.15, 0.4, 0.9, 2], leap: 1, start: 0.9, stop: 1 } as const;
/** Hops after which a pitch has settled: 80 ms, in which a room has mostly taken what was before. */
const SETTLED = 15;
/** Hops after which a note before is no longer heard in a room as more than noise is: 0.1 s. */
const LATE = 20;
/** Rise of power from hop to hop that begins a sound, and to the first half of a hop that may. */
const BEGINNING = 4;
const SOON = 2;
/** Hops in which a low reed pulses at least once, 7.6 ms from pulse to pulse at the lowest. */
const PULSES = 3;
/** Level of silence, dB. */
const SILENT = -120;

/** dB of a power, as far down as silence. */
export const decibels = (power: number): number => Math.max(SILENT, 10 * Math.log10(power + 1e-12));

/** True while the latest window speaks for another verdict than the path's, or a sound has just begun. */
const isWavering = (values: Float64Array, now: number, rise: number): boolean => {
  let top = 0;
  for (let i = 1; i < values.length; i += 1) if ((values[i] ?? 0) > (values[top] ?? 0)) top = i;
  if (now < 0) return (values[top] ?? 0) > NO_PITCH.sound || rise > BEGINNING;
  return Math.abs(top - now) >= COSTS.moves.length && (values[top] ?? 0) > (values[now] ?? 0) + COSTS.leap;
};

/** What is decided about a hop. */
export interface Verdict {
  /** Place of its pitch in the grid, −1 where there is none. */
  readonly place: number;
  /** Whether that goes on from the hop before. */
  readonly same: boolean;
  /** Whether only half of the hop is known. */
  readonly early: boolean;
  readonly wavering: boolean;
  readonly level: number;
}

/** How well no pitch at all explains sound of a level in dB; more than any pitch where it is silence. */
export type SilenceAt = (level: number) => number;

/** Decides which pitch each hop has. */
export interface PitchDecider {
  /** Takes the first half of a hop in; a verdict where another pitch than before has surely begun by then. */
  begin(half: Float64Array, silenceAt: SilenceAt): Verdict | null;
  /** Takes a hop in, of which the first half may be known already. */
  decide(hop: Float64Array, silenceAt: SilenceAt): Verdict;
}

export interface PitchDeciderOptions {
  readonly path: PitchPath;
  /** Samples in a hop. */
  readonly hop: number;
  /** Hops of the shortest window. */
  readonly shortest: number;
  /** Whether the path knows what comes later. */
  readonly foreseen: boolean;
}

/** A decider for one stream, from its evidence and powers; it fills both. */
export const createPitchDecider = (
  { values, add, judge }: PitchEvidence,
  powers: RecentPower,
  { path, hop: size, shortest, foreseen }: PitchDeciderOptions,
): PitchDecider => {
  let place = -1;
  let stood = 0;
  let unvoiced = LATE;
  let wavering = false;
  let begun = false;
  const isSame = (one: number, other: number): boolean =>
    one >= 0 && other >= 0 && Math.abs(one - other) < COSTS.moves.length;
  return {
    begin(half, silenceAt) {
      begun = true;
      add(half, unvoiced < LATE);
      const power = meanSquare(half);
      // Breath flickers between the pulses of a low reed: what sounds gives way early only to what is louder than both.
      const rises = power > SOON * (place < 0 ? powers.mean(1) : powers.most(PULSES));
      if (foreseen || !(rises || (wavering && place < 0))) return null;
      const level = decibels(power);
      const silence = silenceAt(level);
      if (silence === NO_PITCH.silence) return null;
      judge(stood >= SETTLED, false);
      const soon = path.peek(values, silence);
      if (soon < 0 || isSame(soon, place)) return null;
      return { place: soon, same: false, early: true, wavering: false, level };
    },
    decide(hop, silenceAt) {
      const note = unvoiced < LATE;
      if (!begun) add(hop.subarray(0, size / 2), note);
      add(hop.subarray(size / 2), note);
      begun = false;
      powers.push(hop);
      const level = decibels(powers.mean(shortest));
      const silence = silenceAt(level);
      judge(stood >= SETTLED, silence === NO_PITCH.silence);
      const before = place;
      place = path.step(values, silence);
      const same = isSame(place, before);
      stood = same ? stood + 1 : 0;
      unvoiced = place >= 0 ? 0 : unvoiced + 1;
      wavering = !foreseen && silence < NO_PITCH.silence && isWavering(values, place, powers.rise());
      return { place, same, early: false, wavering, level };
    },
  };
};
