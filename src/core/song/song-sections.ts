import { openingOf } from '../arranger/opening';
import type { Plan, Program, Section } from '../arranger/program';
import { sectionAt } from '../arranger/section-at';
import { chartOfChorus, hasEnding, rangeOf, tempoOfChorus } from '../arranger/song-plan';

/** How much of a song is taken away. */
export interface SongExtent {
  readonly choruses: number;
  /** The plan's count-in, or one bar where the plan has none; without it the music begins at once. */
  readonly countIn: boolean;
  /** Without it the last chorus leads on as if another came, so that it can be played round and round. */
  readonly ending: boolean;
}

/** A final chord is held for about this long, whatever the tempo. */
const ENDING_SECONDS = 3;

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

/**
 * About how long a song lasts, in seconds, without arranging it: exact but for the final chord and for slowing
 * down at the end. Throws as `eachSongSection`.
 */
export const songSeconds = (program: Program, extent: SongExtent): number => {
  checkExtent(extent);
  const plan = planOf(program.plan, extent);
  const { meter } = program.chart;
  const secondsOf = (ticks: number, chorus: number): number =>
    (ticks / meter.beatTicks) * (60 / tempoOfChorus(program, chorus));
  const barTicks = meter.beats * meter.beatTicks;
  const { from, to } = rangeOf(program);
  const choruses = Array.from({ length: extent.choruses }, (_, chorus) => {
    const { bars } = program.chart;
    const ticks = bars.slice(from, to + 1).reduce((sum, { length }) => sum + length, 0);
    const counted = plan.repeat !== null && plan.countBetween && chorus > 0 ? barTicks : 0;
    return secondsOf(ticks + counted, chorus);
  });
  const opening =
    plan.intro === 'none' || plan.repeat !== null
      ? 0
      : openingOf(chartOfChorus(program, 0), plan.intro, tempoOfChorus(program, 0)).chart.length;
  const before = secondsOf(opening + plan.countInBars * barTicks, 0);
  const after = extent.ending && hasEnding(plan) ? ENDING_SECONDS : 0;
  return before + choruses.reduce((sum, seconds) => sum + seconds, 0) + after;
};

/** How long a section lasts, in seconds, by its tempo steps. */
export const sectionSeconds = ({ tempo, score, chart }: Section): number =>
  tempo.reduce((sum, { at, bpm }, index) => {
    const until = tempo[index + 1]?.at ?? score.length;
    return sum + ((until - at) / chart.meter.beatTicks) * (60 / bpm);
  }, 0);
