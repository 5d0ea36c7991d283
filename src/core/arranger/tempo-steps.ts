import type { Chart } from '../chart/chart';
import { asBpm, asTicks, type Bpm } from '../theory/units';
import type { Plan, Program, TempoStep } from './program';
import { tempoOfChorus } from './song-plan';

/** The final chord is held about this many seconds. */
const HELD_SECONDS = { cadence: 2.6, held: 4 } as const;
/** At the end of a ritard the band plays at this share of its tempo. */
const RITARD_TO = 0.72;
/** Beat by beat slower through the last two bars. */
export const ritardSteps = (chart: Chart, bpm: number): readonly TempoStep[] => {
  const from = chart.bars.at(-2) ?? chart.bars[0];
  const beats = from === undefined ? 0 : Math.round((chart.length - from.at) / chart.meter.beatTicks);
  return Array.from({ length: beats }, (_, beat) => ({
    at: asTicks((from?.at ?? 0) + beat * chart.meter.beatTicks),
    bpm: asBpm(Math.round(bpm * (1 - (1 - RITARD_TO) * ((beat + 1) / beats) ** 1.5) * 10) / 10),
  }));
};

/** Tempo steps of what is left of a section from a tick on. */
export const tempoFrom = (steps: readonly TempoStep[], from: number): readonly TempoStep[] => {
  const current = steps.findLast(({ at }) => at <= from) ?? steps[0];
  const later = steps.filter(({ at }) => at > from).map(({ at, bpm }) => ({ at: asTicks(at - from), bpm }));
  return current === undefined ? later : [{ at: asTicks(0), bpm: current.bpm }, ...later];
};

/** One tempo through the whole of a chorus. */
export const steadyTempo = (program: Program, chorus: number): readonly TempoStep[] => [
  { at: asTicks(0), bpm: tempoOfChorus(program, chorus) },
];

/** The tempo of the one bar in which the final chord is held. */
export const endingTempo = (ending: Plan['ending'], beats: number, tempo: number): Bpm => {
  const seconds = HELD_SECONDS[ending === 'held' ? 'held' : 'cadence'];
  return asBpm(Math.round(Math.min(tempo, (beats * 60) / seconds) * 10) / 10);
};
