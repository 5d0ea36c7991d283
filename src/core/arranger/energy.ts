import type { PhrasePlace } from '../chart/phrases';
import { createRandom, type Random, seedFrom } from '../theory/random';

/** Energy of a chorus, 0–1, or a break: a chorus in which somebody lays out. */
export type Energy = number | 'break';

/** How loud bars differ from bar to bar: nearly level, with the phrases, or growing through every chorus. */
export const DYNAMICS = ['lively', 'calm', 'building'] as const;
export type Dynamics = (typeof DYNAMICS)[number];

/**
 * The first choruses: sparse, growing, full, a break, growing, fullest. The plan of a song (start medium-soft, one
 * change a chorus, a breakdown at about 0.6 of the way, the fullest before the last) is common practice, no source.
 */
const FIRST: readonly Energy[] = [0.28, 0.55, 0.8, 'break', 0.62, 0.95];

/** Later courses are 4 to 9 choruses long, each from a low to a peak of its own, most with a break on the way. */
const laterCourse = (random: Random): readonly Energy[] => {
  const length = 4 + Math.floor(random() * 6);
  const low = 0.34 + random() * 0.24;
  const peak = 0.74 + random() * 0.24;
  const bend = 0.6 + random() * 0.8;
  const rest = length >= 5 && random() < 0.75 ? Math.ceil(length * 0.6) - 1 : -1;
  return Array.from({ length }, (_, i) =>
    i === rest ? 'break' : low + (peak - low) * (i / (length - 1)) ** bend,
  );
};

/** Slow drift under the courses, in energy and in choruses a turn. */
const DRIFT = 0.05;
const DRIFT_TURN = 11.3;

/** Where a band that breathes is in a chorus, from 0: courses follow each other, none like the one before. */
export const breathingEnergy = (seed: number, chorus: number): Energy => {
  let course: readonly Energy[] = FIRST;
  let start = 0;
  for (let count = 1; chorus >= start + course.length; count += 1) {
    start += course.length;
    course = laterCourse(createRandom(seedFrom(seed, 'course', count)));
  }
  const energy = course[chorus - start] ?? 0.6;
  if (energy === 'break') return energy;
  const phase = createRandom(seedFrom(seed, 'drift'))();
  const spread = (createRandom(seedFrom(seed, 'energy', chorus))() - 0.5) * 0.1;
  const drift = start === 0 ? 0 : DRIFT * Math.sin(2 * Math.PI * (chorus / DRIFT_TURN + phase));
  return Math.min(0.98, Math.max(0.2, energy + spread + drift));
};

/** How much louder and fuller bars get: through a chorus, through a phrase, and from bar to bar by chance. */
const SWELL: Readonly<Record<Dynamics, { chorus: number; phrase: number; chance: number }>> = {
  calm: { chorus: 0.03, phrase: 0.01, chance: 0.01 },
  lively: { chorus: 0.1, phrase: 0.05, chance: 0.06 },
  building: { chorus: 0.34, phrase: 0.04, chance: 0.03 },
};

/** The energy of every bar of a chorus: what the chorus has, swelling as the dynamics ask. */
export const barEnergies = (
  random: Random,
  energy: number,
  phrases: readonly PhrasePlace[],
  dynamics: Dynamics,
): readonly number[] => {
  const swell = SWELL[dynamics];
  return phrases.map((place, bar) => {
    const through = swell.chorus * (bar / phrases.length - 0.3);
    const phrase = swell.phrase * (place.bar / Math.max(1, place.of - 1) - 0.4);
    return energy + through + phrase + (random() - 0.5) * swell.chance;
  });
};
