import type { Sound } from '../harp/harp';
import { soundId } from '../harp/tab';
import { type BendResults, figuresOf } from './bend-results';

/** Sounds that are learnt at a time (by design, no source). */
const AT_A_TIME = 2;
/** Hits or misses in a row after which another sound has its turn. */
const ENOUGH = 2;

interface Progress {
  /** Targets in the order that teaches. */
  readonly order: readonly Sound[];
  readonly resultsOf: (id: string) => BendResults | undefined;
}

/**
 * The sound to practise next: one of the first two that are not steady, and of those that are, the one with the fewest
 * tries: what works is kept in turn, as dropping it costs (doi 10.1016/j.humov.2021.102850). The present one has one
 * more turn after a hit, as that kept best (scapps.org/jems, article 15), and gives way after two hits or two misses.
 * Null for a harp without bends.
 */
export const nextTarget = ({ order, resultsOf }: Progress, present: Sound | null): Sound | null => {
  const figures = order.map((sound) => {
    const results = resultsOf(soundId(sound));
    return { sound, tries: results?.tries ?? [], standing: results && figuresOf(results).standing };
  });
  const last = figures.find(({ sound }) => sound === present)?.tries.slice(-ENOUGH) ?? [];
  const settled = last.length === ENOUGH && last.every(({ hit }) => hit === last[0]?.hit);
  if (present !== null && order.includes(present) && !settled) return present;
  const learning = figures.filter(({ standing }) => standing !== 'steady').slice(0, AT_A_TIME);
  const steady = figures
    .filter(({ standing }) => standing === 'steady')
    .toSorted((a, b) => a.tries.length - b.tries.length)
    .slice(0, 1);
  const turn = [...learning, ...steady].map(({ sound }) => sound);
  const at = present === null ? -1 : turn.indexOf(present);
  return turn[(at + 1) % Math.max(1, turn.length)] ?? null;
};
