import { createRandom, seedFrom } from '../theory/random';

/**
 * How strongly a hand wanders: fast within some beats, slower over phrases. Deviations of players are correlated over
 * two such processes and are no noise from stroke to stroke (doi 10.1371/journal.pone.0186361); periods in beats and
 * shares of this project.
 */
const WAVES = [
  { beats: 6.7, share: 0.25 },
  { beats: 17.3, share: 0.35 },
  { beats: 43.1, share: 0.4 },
] as const;

/**
 * A slow way through −1…1 over the beats of a passage: what one hand plays a little louder and softer by. Its own for
 * every seed and name.
 */
export const wandering = (seed: number, name: string): ((beat: number) => number) => {
  const random = createRandom(seedFrom(seed, 'wander', name));
  const waves = WAVES.map((wave) => ({ ...wave, phase: random() }));
  return (beat) =>
    waves.reduce(
      (sum, { beats, share, phase }) => sum + share * Math.sin(2 * Math.PI * (beat / beats + phase)),
      0,
    );
};
