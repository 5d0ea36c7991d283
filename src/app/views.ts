import type { HeardPosition } from '../audio/band';
import type { Section } from '../core/arranger/program';
import type { Bpm } from '../core/theory/units';
import type { BarView, SessionState } from './session-state';
import type { Tune } from './tune';

type Shown = Pick<SessionState, 'now' | 'next'>;

const restingView = (tune: Tune, bar: number): BarView => ({
  tune,
  bar,
  formBar: bar,
  kind: 'rest',
  chorus: 0,
  tempo: null,
});

const tempoAt = ({ tempo, chart }: Section, bar: number): Bpm | null => {
  const at = chart.bars[bar]?.at ?? 0;
  return tempo.findLast((step) => step.at <= at)?.bpm ?? null;
};

const sectionView = (section: Section, bar: number, tuneOf: (section: Section) => Tune): BarView => ({
  tune: tuneOf(section),
  bar,
  formBar: section.barNumbers[bar] ?? null,
  kind: section.kind,
  chorus: section.chorus,
  tempo: tempoAt(section, bar),
});

/** What is shown while the band rests: the bar at the cursor and the one after it, round the form. */
export const restingViews = (tune: Tune, cursor: number): Shown & Pick<SessionState, 'cursor'> => {
  const bars = tune.chart.bars.length;
  const at = Math.min(cursor, bars - 1);
  return { cursor: at, now: restingView(tune, at), next: restingView(tune, (at + 1) % bars) };
};

/** What is shown while the band plays: the bar being heard and the one after it, across section ends. */
export const heardViews = (
  { section, bar }: HeardPosition,
  upcoming: Section | null,
  tuneOf: (section: Section) => Tune,
): Shown => {
  const within = bar + 1 < section.chart.bars.length;
  const next = within ? sectionView(section, bar + 1, tuneOf) : upcoming && sectionView(upcoming, 0, tuneOf);
  return { now: sectionView(section, bar, tuneOf), next };
};
