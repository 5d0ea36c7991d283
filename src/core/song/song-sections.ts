import { openingOf } from '../arranger/opening';
import type { Plan, Program, Section } from '../arranger/program';
import { sectionAt } from '../arranger/section-at';
import { chartOfChorus, hasEnding, rangeOf, tempoOfChorus } from '../arranger/song-plan';
import { endingTempo, ritardSteps } from '../arranger/tempo-steps';

/** How much of a song is taken away. */
export interface SongExtent {
  readonly choruses: number;
  /** The plan's count-in, or one bar where the plan has none; without it the music begins at once. */
  readonly countIn: boolean;
  /** Without it the last chorus leads on as if another came, so that it can be played round and round. */
  readonly ending: boolean;
}

const planOf = (plan: Plan, { choruses, countIn, ending }: SongExtent): Plan => ({
  ...plan,
  countInBars: countIn ? plan.countInBars || 1 : 0,
  choruses: ending ? choruses : null,
});

const checkExtent = ({ choruses }: SongExtent): void => {
  if (!Number.isInteger(choruses) || choruses < 1) {
    throw new RangeError(`Choruses must be a whole number of at least 1, got ${choruses}`);
  }
};

/**
 * The sections of a song one by one, so that the arranging of a long one can be spread over time. The last one says
 * that nothing follows. Throws RangeError unless there is a whole number of choruses, 1 or more.
 */
export function* eachSongSection(program: Program, extent: SongExtent): Generator<Section, void> {
  checkExtent(extent);
  const limited: Program = { ...program, plan: planOf(program.plan, extent) };
  let current = sectionAt(limited, 0);
  while (current !== null) {
    const following = current.last ? null : sectionAt(limited, current.index + 1);
    const ends = following === null || following.chorus >= extent.choruses;
    yield ends ? { ...current, last: true } : current;
    current = ends ? null : following;
  }
}

/** What the end of the last chorus takes beside its own time: slowing down, and the final chord. */
const closingSeconds = (program: Program, chorus: number): number => {
  const { plan } = program;
  const tempo = tempoOfChorus(program, chorus);
  const { beats } = program.chart.meter;
  const slowing =
    plan.ritard && plan.repeat === null ? ritardSteps(chartOfChorus(program, chorus), tempo) : [];
  const held = hasEnding(plan) ? (beats * 60) / endingTempo(plan.ending, beats, tempo) : 0;
  return slowing.reduce((sum, { bpm }) => sum + 60 / bpm - 60 / tempo, held);
};

/**
 * How long a song lasts, in seconds, without arranging it; what rings on after the final chord is not in it. Throws as
 * `eachSongSection`.
 */
export const songSeconds = (program: Program, extent: SongExtent): number => {
  checkExtent(extent);
  const plan = planOf(program.plan, extent);
  const { meter } = program.chart;
  const secondsOf = (ticks: number, chorus: number): number =>
    (ticks / meter.beatTicks) * (60 / tempoOfChorus(program, chorus));
  const barTicks = meter.beats * meter.beatTicks;
  const choruses = Array.from({ length: extent.choruses }, (_, chorus) => {
    const { bars } = program.chart;
    const { from, to } = rangeOf(program, chorus);
    const ticks = bars.slice(from, to + 1).reduce((sum, { length }) => sum + length, 0);
    const counted = plan.repeat !== null && plan.countBetween && chorus > 0 ? barTicks : 0;
    return secondsOf(ticks + counted, chorus);
  });
  const opening =
    plan.intro === 'none' || plan.repeat !== null
      ? 0
      : openingOf(chartOfChorus(program, 0), plan.intro, tempoOfChorus(program, 0)).chart.length;
  const before = secondsOf(opening + plan.countInBars * barTicks, 0);
  const after = extent.ending ? closingSeconds({ ...program, plan }, extent.choruses - 1) : 0;
  return before + choruses.reduce((sum, seconds) => sum + seconds, 0) + after;
};

/** How long a section lasts, in seconds, by its tempo steps. */
export const sectionSeconds = ({ tempo, score, chart }: Section): number =>
  tempo.reduce((sum, { at, bpm }, index) => {
    const until = tempo[index + 1]?.at ?? score.length;
    return sum + ((until - at) / chart.meter.beatTicks) * (60 / bpm);
  }, 0);
