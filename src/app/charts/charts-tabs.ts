/**
 * One chart in two tabs. What is typed in one is followed in the others; where two texts have come apart, this tab's
 * goes on as a chart of its own, so that neither takes the other's place.
 */

import type { OwnChart } from '../../core/chart-text/own-chart';
import {
  type ChartsView,
  freshName,
  isSameChart,
  listCharts,
  savedChart,
} from '../../core/song/chart-drafts';
import type { ChartDrafts } from '../../core/song/drafts';
import { record, startHistory } from '../../core/song/history';
import type { Notice } from '../keeping/notice';

/** Drafts as this tab read or wrote them last, by id. */
export type KnownDrafts = Readonly<Record<string, OwnChart>>;

/** Drafts by id, for comparing with what another tab writes. */
export const knownDrafts = (drafts: readonly OwnChart[]): KnownDrafts =>
  Object.fromEntries(drafts.map((chart) => [chart.id, chart]));

/** A draft that stays open under another id and name. */
export interface Split {
  readonly chartDrafts: ChartDrafts;
  readonly chart: OwnChart;
  readonly notice: Notice;
}

/**
 * Lets the draft of a chart go on as a chart of its own; `null` where there is no draft.
 * @param theirs what the other tab has not saved yet of the chart; `null` where the chart is as saved.
 * @param newId of the chart this tab goes on with.
 */
export const splitOff = (
  view: ChartsView,
  id: string,
  theirs: OwnChart | null,
  newId: string,
): Split | null => {
  const draft = view.chartDrafts.drafts[id];
  if (draft === undefined) return null;
  const name = freshName(
    draft.present.name,
    listCharts(view).map((each) => each.name),
  );
  const renamed = (chart: OwnChart): OwnChart => ({ ...chart, id: newId, name });
  const { [id]: _, ...others } = view.chartDrafts.drafts;
  const { open, splitFrom } = view.chartDrafts;
  return {
    chart: renamed(draft.present),
    chartDrafts: {
      ...view.chartDrafts,
      open: open === id ? newId : open,
      splitFrom: { ...splitFrom, [newId]: splitFrom[id] ?? id },
      drafts: {
        ...others,
        ...(theirs === null ? {} : { [id]: startHistory(theirs) }),
        [newId]: {
          past: draft.past.map(renamed),
          present: renamed(draft.present),
          future: draft.future.map(renamed),
        },
      },
    },
    notice: {
      id: `split-${newId}`,
      tone: 'trouble',
      text: `Another tab changed “${draft.present.name}” too. Both texts are kept: what you wrote here goes on as “${name}”.`,
    },
  };
};

/** Charts whose draft here is neither what another tab has saved now nor what was saved before. */
export const overtaken = (
  { chartDrafts, ownCharts }: ChartsView,
  next: readonly OwnChart[],
): readonly string[] =>
  Object.entries(chartDrafts.drafts)
    .filter(([id, { present }]) => {
      const [was, is] = [savedChart(ownCharts, id), savedChart(next, id)];
      if (is === null || isSameChart(is, present)) return false;
      return was === null || !(isSameChart(was, is) || isSameChart(was, present));
    })
    .map(([id]) => id);

/** The drafts after another tab has typed: drafts untouched here follow, new ones join, what is gone there goes. */
export const followDrafts = (
  { chartDrafts, ownCharts }: ChartsView,
  known: KnownDrafts,
  theirs: readonly OwnChart[],
): ChartDrafts => {
  const drafts = { ...chartDrafts.drafts };
  for (const chart of theirs) {
    const mine = drafts[chart.id];
    const before = known[chart.id];
    const saved = savedChart(ownCharts, chart.id);
    if (mine === undefined) {
      if (saved === null || !isSameChart(saved, chart)) drafts[chart.id] = startHistory(chart);
    } else if (isUntouched(mine.present, before ?? saved) && !isSameChart(mine.present, chart)) {
      drafts[chart.id] = record(mine, chart);
    }
  }
  for (const [id, before] of Object.entries(known)) {
    const mine = drafts[id];
    if (mine === undefined || theirs.some((chart) => chart.id === id)) continue;
    const saved = savedChart(ownCharts, id);
    if (isUntouched(mine.present, before) && !(saved !== null && isSameChart(saved, mine.present)))
      delete drafts[id];
  }
  return { ...chartDrafts, drafts };
};

const isUntouched = (present: OwnChart, before: OwnChart | null): boolean =>
  before !== null && isSameChart(present, before);
