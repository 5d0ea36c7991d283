import type { OwnChart } from '../chart-text/own-chart';
import type { ChartDrafts } from './drafts';
import { type History, record, redo, startHistory, undo } from './history';
import { continuesTyping } from './typing';

/** The drafts together with the saved charts. */
export interface ChartsView {
  readonly chartDrafts: ChartDrafts;
  readonly ownCharts: readonly OwnChart[];
}

/** How a chart stands: `changed` and `new` are not saved yet; `unwritten` is, but waits to be written. */
export interface ListedChart {
  readonly id: string;
  readonly name: string;
  readonly standing: 'saved' | 'unwritten' | 'changed' | 'new';
}

/** True when two charts are the same in everything. */
export const isSameChart = (a: OwnChart, b: OwnChart): boolean =>
  a.id === b.id &&
  a.name === b.name &&
  a.text === b.text &&
  a.tonic === b.tonic &&
  a.mode === b.mode &&
  a.meter === b.meter;

/** The chart as it was saved last; null where it never was. */
export const savedChart = (ownCharts: readonly OwnChart[], id: string): OwnChart | null =>
  ownCharts.find((chart) => chart.id === id) ?? null;

/** The open chart with its history; null when none is. */
export const openDraft = ({ chartDrafts, ownCharts }: ChartsView): History<OwnChart> | null => {
  const { open, drafts } = chartDrafts;
  if (open === null) return null;
  const draft = drafts[open];
  if (draft !== undefined) return draft;
  const saved = savedChart(ownCharts, open);
  return saved === null ? null : startHistory(saved);
};

const standingOf = (
  saved: OwnChart | null,
  present: OwnChart,
  unwritten: readonly string[],
): ListedChart['standing'] => {
  if (saved === null) return 'new';
  if (!isSameChart(saved, present)) return 'changed';
  return unwritten.includes(saved.id) ? 'unwritten' : 'saved';
};

/** All charts of the player: the saved ones in their order, then those never saved. */
export const listCharts = ({ chartDrafts, ownCharts }: ChartsView): readonly ListedChart[] => {
  const { drafts } = chartDrafts;
  const unsaved = Object.values(drafts).filter(({ present }) => savedChart(ownCharts, present.id) === null);
  return [
    ...ownCharts.map((saved) => ({ saved, present: drafts[saved.id]?.present ?? saved })),
    ...unsaved.map(({ present }) => ({ saved: null, present })),
  ].map(({ saved, present }) => ({
    id: present.id,
    name: present.name.trim() || 'Chart without a name',
    standing: standingOf(saved, present, chartDrafts.unwritten),
  }));
};

/** A name nobody has yet: the wished one, or with the first free number. */
export const freshName = (wished: string, taken: readonly string[]): string => {
  let name = wished;
  for (let number = 2; taken.includes(name); number += 1) name = `${wished} ${number}`;
  return name;
};

const FIELDS = ['name', 'text', 'tonic', 'mode', 'meter'] as const;

/** The one field in which two charts differ, if it is typed; null otherwise. */
const typedField = (a: OwnChart, b: OwnChart): 'name' | 'text' | null => {
  const [field, ...others] = FIELDS.filter((each) => a[each] !== b[each]);
  return others.length === 0 && (field === 'name' || field === 'text') ? field : null;
};

/** Takes a step; what is typed in one go is one step. */
const stepTo = (history: History<OwnChart>, next: OwnChart): History<OwnChart> => {
  const { past, present, future } = history;
  if (isSameChart(present, next)) return history;
  const before = past.at(-1);
  const field = typedField(present, next);
  const goesOn =
    before !== undefined &&
    future.length === 0 &&
    field !== null &&
    typedField(before, present) === field &&
    continuesTyping(before[field], present[field], next[field]);
  return goesOn ? { past, present: next, future } : record(history, next);
};

/** The drafts with another state of the open chart; the same when none is open. */
const withOpenDraft = (
  view: ChartsView,
  change: (draft: History<OwnChart>) => History<OwnChart>,
): ChartDrafts => {
  const draft = openDraft(view);
  if (draft === null) return view.chartDrafts;
  const { chartDrafts } = view;
  return { ...chartDrafts, drafts: { ...chartDrafts.drafts, [draft.present.id]: change(draft) } };
};

/** A step in the history of the open chart. */
export const editOpen = (view: ChartsView, change: Partial<Omit<OwnChart, 'id'>>): ChartDrafts =>
  withOpenDraft(view, (draft) => stepTo(draft, { ...draft.present, ...change }));

/** The open chart as it was a step before; the drafts unchanged where there is none. */
export const undoOpen = (view: ChartsView): ChartDrafts => withOpenDraft(view, undo);

/** Takes the last undoing back, as long as nothing was changed since. */
export const redoOpen = (view: ChartsView): ChartDrafts => withOpenDraft(view, redo);

const withoutDraft = (drafts: ChartDrafts['drafts'], id: string): ChartDrafts['drafts'] =>
  Object.fromEntries(Object.entries(drafts).filter(([each]) => each !== id));

/** Opens a chart. A new one that was left empty goes, so that trying out the button leaves nothing behind. */
export const openChart = ({ chartDrafts, ownCharts }: ChartsView, id: string): ChartDrafts => {
  const { open, drafts } = chartDrafts;
  const left = open === null || open === id ? undefined : drafts[open];
  const isEmpty =
    left !== undefined && left.present.text.trim() === '' && savedChart(ownCharts, left.present.id) === null;
  return { ...chartDrafts, open: id, drafts: isEmpty ? withoutDraft(drafts, left.present.id) : drafts };
};

/** Adds a new chart and opens it. */
export const addDraft = (view: ChartsView, chart: OwnChart): ChartDrafts => {
  const opened = openChart(view, chart.id);
  return { ...opened, drafts: { ...opened.drafts, [chart.id]: startHistory(chart) } };
};

/** Takes the open chart away, remembered as deleted. */
export const deleteOpen = (view: ChartsView): ChartDrafts => {
  const draft = openDraft(view);
  if (draft === null) return view.chartDrafts;
  const { id } = draft.present;
  return {
    ...view.chartDrafts,
    open: null,
    drafts: withoutDraft(view.chartDrafts.drafts, id),
    deleted: { saved: savedChart(view.ownCharts, id), draft },
  };
};

/** Brings the deleted chart back and opens it. */
export const restoreDeleted = (view: ChartsView): ChartDrafts => {
  const { deleted } = view.chartDrafts;
  if (deleted === null) return view.chartDrafts;
  const { id } = deleted.draft.present;
  const opened = openChart(view, id);
  return { ...opened, open: id, drafts: { ...opened.drafts, [id]: deleted.draft }, deleted: null };
};

/**
 * The drafts when the saved charts have changed, here or in another tab: a draft that was as saved follows, one with
 * changes of its own stays.
 */
export const followSaved = (
  { chartDrafts, ownCharts }: ChartsView,
  next: readonly OwnChart[],
): ChartDrafts => {
  const stays = Object.entries(chartDrafts.drafts).filter(([id, { present }]) => {
    const [was, is] = [savedChart(ownCharts, id), savedChart(next, id)];
    const unchanged = was !== null && isSameChart(was, present);
    return !unchanged || (is !== null && isSameChart(is, present));
  });
  return { ...chartDrafts, drafts: Object.fromEntries(stays) };
};
