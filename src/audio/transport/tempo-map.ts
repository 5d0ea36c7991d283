import type { Section } from '../../core/arranger/program';
import { elementAt } from '../../core/theory/element-at';

interface Stretch {
  /** Ticks from the section's start. */
  readonly at: number;
  /** Seconds from the section's start. */
  readonly seconds: number;
  readonly secondsPerTick: number;
}

/** The section's tempo steps with their times added up, so that ticks and seconds convert both ways. */
export type TempoMap = readonly Stretch[];

/**
 * Adds up the tempo steps of a section. Tempo counts the beats of the meter (a dotted quarter in 12/8).
 * Throws RangeError when the steps do not start at 0 or do not rise.
 */
export const tempoMapOf = (section: Pick<Section, 'tempo' | 'chart'>): TempoMap => {
  const { beatTicks } = section.chart.meter;
  const map: Stretch[] = [];
  for (const step of section.tempo) {
    const before = map.at(-1);
    if (before === undefined ? step.at !== 0 : step.at <= before.at) {
      throw new RangeError(`tempo steps must start at 0 and rise, got ${step.at} after ${before?.at}`);
    }
    const seconds = before ? before.seconds + (step.at - before.at) * before.secondsPerTick : 0;
    map.push({ at: step.at, seconds, secondsPerTick: 60 / (step.bpm * beatTicks) });
  }
  if (map.length === 0) throw new RangeError('a section needs at least one tempo step, got none');
  return map;
};

const stretchBefore = (map: TempoMap, reached: (stretch: Stretch) => boolean): Stretch => {
  let found = elementAt(map, 0);
  for (const stretch of map) {
    if (!reached(stretch)) break;
    found = stretch;
  }
  return found;
};

/** Seconds from the section's start to a tick; the first and last tempo go on outside the section. */
export const secondsAt = (map: TempoMap, ticks: number): number => {
  const stretch = stretchBefore(map, ({ at }) => at <= ticks);
  return stretch.seconds + (ticks - stretch.at) * stretch.secondsPerTick;
};

/** The inverse of `secondsAt`; fractional ticks. */
export const ticksAt = (map: TempoMap, seconds: number): number => {
  const stretch = stretchBefore(map, (candidate) => candidate.seconds <= seconds);
  return stretch.at + (seconds - stretch.seconds) / stretch.secondsPerTick;
};
