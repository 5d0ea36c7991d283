import type { Section } from './program';

/** How long a tick of a section lasts there, in seconds. */
export const secondsPerTickAt = ({ tempo, chart }: Section, ticks: number): number => {
  const bpm = tempo.findLast(({ at }) => at <= ticks)?.bpm ?? tempo[0]?.bpm ?? 100;
  return 60 / (bpm * chart.meter.beatTicks);
};
