/** How one note is breathed: its pitch and level over time, from the plan of it. */
import type { Sound } from '../../../src/core/harp/harp';
import { createRandom, type Random, seedFrom } from '../../../src/core/theory/random';
import { amplitude, between, normal } from './chance';

/** A glide within a breath to another sound of the hole. */
export interface PathStep {
  readonly at: number;
  readonly seconds: number;
  readonly sound: Sound;
  /** Where it settles, re the pitch the note settles on first. */
  readonly cents: number;
}

/** A note as it is meant, before the reed answers. */
export interface PlannedNote {
  /** Seconds. */
  readonly at: number;
  readonly length: number;
  readonly sounds: readonly Sound[];
  /** dB re the take's usual level. */
  readonly level: number;
  /** Tongued, breathed, or on from the note before without a new breath (a slide, or a bend within the hole). */
  readonly attack: 'tongue' | 'breath' | 'legato';
  /** Cents from the beginning to the settled pitch, and how long that takes. */
  readonly approach: { readonly cents: number; readonly seconds: number; readonly wait: number } | null;
  /** Bends on from there within the breath: each begins to glide at `at` seconds of the note. */
  readonly path: readonly PathStep[];
  /** Cents the settled pitch lies off what the sound should be: the player's aim. */
  readonly aim: number;
  readonly vibrato: {
    readonly rate: number;
    readonly cents: number;
    /** Fall of the level at each pulse. dB. */
    readonly depth: number;
    readonly from: number;
  } | null;
  /** Hands opening and closing: fall of the highs in dB, times a second. */
  readonly hands: { readonly rate: number; readonly depth: number } | null;
  /** An overbend that does not come. */
  readonly failed: 'squeal' | 'choke' | 'waver' | null;
}

/** Curves over the time of a note, seconds from its beginning. */
export interface Gesture {
  /** Cents from the settled pitch. */
  readonly cents: (time: number) => number;
  /** Amplitude, 1 at the note's own level. */
  readonly level: (time: number) => number;
  /** Fall of the highs by the hands, dB. */
  readonly closed: (time: number) => number;
  /** Seconds the sound goes on after its end. */
  readonly release: number;
  /** Rise from nothing to all. Seconds. */
  readonly rise: number;
}

const smooth = (share: number): number => {
  const x = Math.min(1, Math.max(0, share));
  return x * x * (3 - 2 * x);
};

/** A slow wander of unit spread: three sines of odd frequencies. */
const wander = (random: Random, hz: number): ((time: number) => number) => {
  const sines = [1, 1.73, 2.9].map((factor) => ({
    turn: 2 * Math.PI * hz * factor * between(random, 0.8, 1.2),
    phase: 2 * Math.PI * random(),
  }));
  return (time) =>
    sines.reduce((sum, { turn, phase }) => sum + Math.sin(turn * time + phase), 0) * Math.sqrt(2 / 3);
};

const RISES = { tongue: 0.6, breath: 1.4, legato: 0.4 } as const;

/** What makes a failed overbend unlike a note: cents over time. */
const failure = (kind: PlannedNote['failed'], random: Random): ((time: number) => number) => {
  if (kind === 'waver') {
    const [deep, quick] = [wander(random, 3), wander(random, 9)];
    return (time) => 55 * deep(time) + 45 * quick(time);
  }
  if (kind === 'squeal') {
    const up = between(random, 900, 1900);
    const quick = wander(random, 11);
    return (time) => up + 40 * quick(time);
  }
  const deep = wander(random, 4);
  return (time) => -70 - 60 * deep(time);
};

const chokes = (random: Random): ((time: number) => number) => {
  const beat = between(random, 9, 17);
  const phase = 2 * Math.PI * random();
  return (time) => (Math.sin(2 * Math.PI * beat * time + phase) > 0.1 ? 0.9 : 0.06);
};

/** The curves of a note whose reed takes `rise` seconds to speak when breathed. */
export const gestureOf = (note: PlannedNote, reedRise: number, seed: number): Gesture => {
  const random = createRandom(seedFrom(seed, 'gesture', Math.round(note.at * 1000)));
  const { approach, vibrato, hands, failed, length, path } = note;
  const rise = Math.min(reedRise * RISES[note.attack] * between(random, 0.8, 1.3), 0.7 * length);
  const release = note.attack === 'legato' ? 0.008 : between(random, 0.008, 0.035);
  const settle = note.attack === 'legato' ? 0 : between(random, -25, 12);
  const drift = wander(random, between(random, 0.8, 3));
  const wobble = between(random, 0.5, 3);
  const swell = between(random, -2.5, 2.5);
  const rough = wander(random, 40);
  const wrong = failed === null ? null : failure(failed, random);
  const choke = failed === 'choke' ? chokes(random) : null;
  const phase = 2 * Math.PI * random();
  const pulse = (time: number): number =>
    vibrato === null
      ? 0
      : smooth((time - vibrato.from) / 0.15) * Math.sin(2 * Math.PI * vibrato.rate * (time - vibrato.from));
  const approachCents = (time: number): number =>
    approach === null ? 0 : approach.cents * (1 - smooth((time - approach.wait) / approach.seconds));
  const pathCents = (time: number): number => {
    let cents = 0;
    for (const step of path) cents += (step.cents - cents) * smooth((time - step.at) / step.seconds);
    return cents;
  };
  return {
    cents: (time) =>
      approachCents(time) +
      pathCents(time) +
      settle * Math.exp(-time / (0.4 * reedRise)) +
      rough(time) * 0.25 * settle * Math.exp(-time / (0.5 * reedRise)) +
      wobble * drift(time) +
      (vibrato?.cents ?? 0) * pulse(time) +
      (wrong?.(time) ?? 0),
    level: (time) => {
      const up = smooth(time / (rise * 1.6));
      const down = time <= length ? 1 : Math.exp(-4 * ((time - length) / release));
      const shape = amplitude((swell * Math.min(time, length)) / length);
      const beat = amplitude(-0.5 * (vibrato?.depth ?? 0) * (1 - pulse(time)) * (vibrato ? 1 : 0));
      return up * down * shape * beat * (choke?.(time) ?? 1) * (1 + 0.02 * drift(1.7 * time));
    },
    closed: (time) =>
      hands === null ? 0 : hands.depth * (0.5 - 0.5 * Math.cos(2 * Math.PI * hands.rate * time + phase)),
    release,
    rise: rise * 1.6,
  };
};

/** How far off a player's bends and overbends land, as a normal deviate in cents. */
export const aimOf = ({ technique }: Sound, spread: number, random: Random): number =>
  technique === 'natural' ? 0 : spread * Math.max(-1.8, Math.min(1.8, normal(random)));
