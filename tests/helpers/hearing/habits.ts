/** How a player shapes single notes. */
import type { Sound } from '../../../src/core/harp/harp';
import type { Random } from '../../../src/core/theory/random';
import { between, happens, normal } from './chance';
import { aimOf, type PlannedNote } from './gesture';

/** What a player does more or less of. */
export interface Habits {
  readonly beat: number;
  readonly spread: number;
  readonly scoops: number;
  readonly vibrato: number;
  readonly hands: number;
  readonly legato: number;
  readonly glides: number;
  readonly dynamics: number;
}

/** A player by chance. */
export const habitsOf = (random: Random): Habits => ({
  beat: 60 / between(random, 66, 168),
  spread: between(random, 3, 14),
  scoops: between(random, 0, 0.35),
  vibrato: between(random, 0, 0.5),
  hands: happens(random, 0.3) ? between(random, 0.2, 1) : 0,
  legato: between(random, 0.1, 0.6),
  glides: between(random, 0.1, 0.7),
  dynamics: between(random, 1, 4),
});

const scoopOf = (sound: Sound, habits: Habits, random: Random): PlannedNote['approach'] => {
  const bent = sound.technique !== 'natural';
  if (!happens(random, bent ? 0.3 + habits.scoops : habits.scoops)) return null;
  // A bend hit cold is come upon from above as often as from below; others begin flat.
  const above = bent && happens(random, 0.5);
  return {
    cents: (above ? 1 : -1) * between(random, 30, above ? 70 : 100),
    seconds: between(random, 0.04, 0.15),
    wait: 0,
  };
};

const vibratoOf = (length: number, share: number, random: Random): PlannedNote['vibrato'] =>
  length < 0.45 || !happens(random, share)
    ? null
    : {
        rate: between(random, 4.5, 7.5),
        cents: between(random, 6, 40),
        depth: between(random, 0.5, 7),
        from: between(random, 0.05, 0.25),
      };

/** A note as such a player plays it. */
export const noteOf = (
  sound: Sound,
  at: number,
  length: number,
  habits: Habits,
  random: Random,
): PlannedNote => ({
  at,
  length,
  sounds: [sound],
  level: Math.max(-14, Math.min(4, habits.dynamics * normal(random))),
  attack: happens(random, 0.6) ? 'tongue' : 'breath',
  approach: length > 0.16 ? scoopOf(sound, habits, random) : null,
  path: [],
  aim: aimOf(sound, habits.spread, random),
  vibrato: vibratoOf(length, habits.vibrato, random),
  hands:
    length > 0.4 && happens(random, habits.hands)
      ? { rate: between(random, 2.5, 6.5), depth: between(random, 4, 14) }
      : null,
  failed: null,
});
