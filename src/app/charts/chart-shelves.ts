import { type OwnChart, parseOwnChart } from '../../core/chart-text/own-chart';
import { followSaved, isSameChart, savedChart } from '../../core/song/chart-drafts';
import { cutText, LONGEST_NAME } from '../../core/theory/kept-text';
import { openShelf, type ReadItem, type Shelf } from '../keeping/shelf';
import type { Stand } from '../song/feature';
import type { SongState } from '../song/song-state';
import type { ChartsState } from './charts-state';
import { followDrafts, type KnownDrafts, knownDrafts, overtaken, splitOff } from './charts-tabs';

/** What the charts find on the stand. */
export type ChartStand = Stand<ChartsState & SongState>;

/** Reads a kept chart; what is wrong with it in sentences. Never throws. */
export const parseItem = (value: unknown): ReadItem<OwnChart> => {
  const { chart, problems } = parseOwnChart(value);
  return { item: chart, problems };
};

/** A draft keeps its name as it is typed, an empty one too: it is not wrong yet. */
const parseDraft = (value: unknown): ReadItem<OwnChart> => {
  const name: unknown = typeof value === 'object' && value !== null && 'name' in value ? value.name : null;
  if (typeof name !== 'string') return parseItem(value);
  const { item, problems } = parseItem(Object.assign({}, value, { name: name.trim() || 'typed' }));
  return { item: item && { ...item, name: cutText(name, LONGEST_NAME) }, problems };
};

/** The charts as the browser keeps them, in step with the page's state. */
export interface ChartShelves {
  readonly charts: Shelf<OwnChart>;
  /** What was typed and not saved, so that not even a closed browser loses it. */
  readonly drafts: Shelf<OwnChart>;
  /** Takes note of a draft as this tab wrote it; `null` when it is gone. */
  noteDraft(id: string, draft: OwnChart | null): void;
  /** The chart to go on with in place of one that another tab has changed unseen; the same one otherwise. */
  part(chart: OwnChart): OwnChart;
}

/** Whether what another tab wrote is neither this chart nor what this tab knew of it. */
const isNews = (
  theirs: OwnChart | null,
  chart: OwnChart,
  mine: OwnChart | null | undefined,
): theirs is OwnChart =>
  theirs !== null && !isSameChart(theirs, chart) && !(mine && isSameChart(theirs, mine));

/** Lets go of the drafts whose charts are written as they stand: no draft goes before. */
const dropWritten = (drafts: Shelf<OwnChart>, charts: Shelf<OwnChart>): void => {
  for (const draft of drafts.items()) {
    const saved = savedChart(charts.items(), draft.id);
    if (saved !== null && isSameChart(saved, draft)) drafts.remove(draft.id);
  }
};

/** Opens the shelf of what is typed and not saved, with the drafts as this tab last saw them. */
const openDraftShelf = ({ kept, keeper, store, board }: ChartStand) => {
  let known: KnownDrafts = {};
  const drafts: Shelf<OwnChart> = openShelf<OwnChart>({
    kept,
    keeper,
    name: 'chart-drafts',
    noun: 'unsaved chart',
    parse: parseDraft,
    onChange: (items, elsewhere) => {
      if (!elsewhere) return;
      store.setState({ chartDrafts: followDrafts(store.getState(), known, items) });
      known = knownDrafts(items);
    },
    onNotice: board.post,
  });
  known = knownDrafts(drafts.items());
  return {
    drafts,
    knownDraft: (id: string) => known[id],
    noteDraft: (id: string, draft: OwnChart | null): void => {
      const { [id]: _, ...others } = known;
      known = draft === null ? others : { ...others, [id]: draft };
    },
  };
};

/** Opens the shelves of saved charts and of those still being written. */
export const openChartShelves = (stand: ChartStand): ChartShelves => {
  const { kept, keeper, store, board, newSeed } = stand;
  const state = store.getState;
  const split = (id: string, theirs: OwnChart | null): OwnChart | null => {
    const parted = splitOff(state(), id, theirs, `chart-${newSeed()}`);
    if (parted === null) return null;
    store.setState({ chartDrafts: parted.chartDrafts });
    board.post(parted.notice);
    return parted.chart;
  };

  const charts: Shelf<OwnChart> = openShelf<OwnChart>({
    kept,
    keeper,
    name: 'charts',
    noun: 'chart',
    parse: parseItem,
    onChange: (ownCharts) => {
      for (const id of overtaken(state(), ownCharts)) {
        const chart = split(id, null);
        if (chart !== null) keepDraft(chart);
      }
      const unwritten = ownCharts.filter(({ id }) => !charts.isWritten(id)).map(({ id }) => id);
      store.setState((now) => ({ ownCharts, chartDrafts: { ...followSaved(now, ownCharts), unwritten } }));
      stand.takeSavedCharts();
    },
    onWritten: () => {
      dropWritten(drafts, charts);
      store.setState(({ chartDrafts }) => ({ chartDrafts: { ...chartDrafts, unwritten: [] } }));
    },
    onNotice: board.post,
  });
  const { drafts, noteDraft, knownDraft } = openDraftShelf(stand);
  const keepDraft = (chart: OwnChart): void => {
    if (drafts.put(chart)) noteDraft(chart.id, chart);
  };

  const part = (chart: OwnChart): OwnChart => {
    const { id } = chart;
    const draft = drafts.stored(id);
    const unseen = isNews(draft, chart, knownDraft(id)) ? draft : null;
    const saved = isNews(charts.stored(id), chart, savedChart(state().ownCharts, id));
    return unseen !== null || saved ? (split(id, unseen) ?? chart) : chart;
  };
  return { charts, drafts, noteDraft, part };
};
