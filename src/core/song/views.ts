import type { Playhead } from '../arranger/playhead';
import type { Section } from '../arranger/program';
import { tempoAt } from '../arranger/section-time';
import type { Chart } from '../chart/chart';
import type { BarView, ShownBars } from './bar-view';
import type { Tune } from './tune';

const restingView = (tune: Tune, bar: number): BarView => ({
  tune,
  bar,
  formBar: bar,
  kind: 'rest',
  chorus: 0,
  tempo: null,
});

const sectionView = (section: Section, bar: number, tuneOf: (section: Section) => Tune): BarView => ({
  tune: tuneOf(section),
  bar,
  formBar: section.barNumbers[bar] ?? null,
  kind: section.kind,
  chorus: section.chorus,
  tempo: tempoAt(section, section.chart.bars[bar]?.at ?? 0),
});

/** What is shown while the band rests: the form, the bar at the cursor and the one after it, round the form. */
export const restingViews = (
  tune: Tune,
  cursor: number,
): ShownBars & { readonly cursor: number; readonly form: Chart } => {
  const bars = tune.chart.bars.length;
  const at = Math.min(cursor, bars - 1);
  return {
    form: tune.chart,
    cursor: at,
    now: restingView(tune, at),
    next: restingView(tune, (at + 1) % bars),
  };
};

/** What is shown while the band plays: the bar being heard and the one after it, across section ends. */
export const playingViews = (
  { section, bar }: Playhead,
  upcoming: Section | null,
  tuneOf: (section: Section) => Tune,
): ShownBars => {
  const within = bar + 1 < section.chart.bars.length;
  const next = within ? sectionView(section, bar + 1, tuneOf) : upcoming && sectionView(upcoming, 0, tuneOf);
  return { now: sectionView(section, bar, tuneOf), next };
};
