import type { Bpm } from '../theory/units';
import type { Section } from './program';

/** The tempo at a place of a section; the first one before it begins. */
export const tempoAt = ({ tempo }: Pick<Section, 'tempo'>, ticks: number): Bpm | null =>
  (tempo.findLast(({ at }) => at <= ticks) ?? tempo[0])?.bpm ?? null;

/** How long a tick of a section lasts there, in seconds. */
export const secondsPerTickAt = (section: Section, ticks: number): number =>
  60 / ((tempoAt(section, ticks) ?? 100) * section.chart.meter.beatTicks);
