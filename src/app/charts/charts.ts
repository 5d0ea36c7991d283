import { FORMS } from '../../core/chart/forms';
import {
  LONGEST_NAME,
  type OwnChart,
  otherSpelling,
  parseOwnChart,
  readOwnChart,
  tonicIn,
} from '../../core/chart-text/own-chart';
import { formAsText } from '../../core/chart-text/print-chart';
import { respellText, transposeText } from '../../core/chart-text/transpose-text';
import {
  addDraft,
  type ChartDrafts,
  deleteOpen,
  editOpen,
  followSaved,
  freshName,
  isSameChart,
  listCharts,
  openChart,
  openDraft,
  redoOpen,
  restoreDeleted,
  savedChart,
  undoOpen,
} from '../../core/song/chart-drafts';
import { formOf } from '../../core/song/tune';
import type { KeptValues } from '../../storage/kept-values';
import type { Keeper } from '../keeping/keeper';
import type { Notice } from '../keeping/notice';
import { openShelf, type ReadItem, type Shelf } from '../keeping/shelf';
import type { Slice } from '../slice';
import type { SongState } from '../song/song-state';
import type { ChartsState } from './charts-state';
import { followDrafts, type KnownDrafts, knownDrafts, overtaken, splitOff } from './charts-tabs';

/** What the page can ask for about charts of the player's own. Editing concerns the open chart. */
export interface ChartCommands {
  newChart(): void;
  /** Opens a copy of the form now chosen, in the song's key. */
  duplicateForm(): void;
  openChart(id: string): void;
  /** Leaves the open chart as it is. */
  closeChart(): void;
  editChart(change: Partial<Omit<OwnChart, 'id'>>): void;
  transposeChart(semitones: number): void;
  /** Writes the chart in the other spelling of its key, where there is one. */
  respellChart(): void;
  undoChart(): void;
  redoChart(): void;
  /** Keeps the chart as it stands and plays it. */
  saveChart(): void;
  deleteChart(): void;
  /** Brings the chart deleted last back as it was. */
  restoreChart(): void;
}

export interface OwnChartsOptions {
  readonly kept: KeptValues;
  readonly keeper: Keeper;
  readonly store: Slice<ChartsState & SongState>;
  readonly post: (notice: Notice) => void;
  /** A whole number that differs each time and from tab to tab. */
  readonly newSeed: () => number;
  readonly chooseForm: (id: string) => void;
  /** Called after the saved charts have changed, here or in another tab. */
  readonly onSaved: () => void;
}

export interface OwnCharts {
  readonly commands: ChartCommands;
  dispose(): void;
}

const parse = (value: unknown): ReadItem<OwnChart> => {
  const { chart, problems } = parseOwnChart(value);
  return { item: chart, problems };
};

/** A draft keeps its name as it is typed, an empty one too: it is not wrong yet. */
const parseDraft = (value: unknown): ReadItem<OwnChart> => {
  const name: unknown = typeof value === 'object' && value !== null && 'name' in value ? value.name : null;
  if (typeof name !== 'string') return parse(value);
  const { item, problems } = parse(Object.assign({}, value, { name: name.trim() || 'typed' }));
  return { item: item && { ...item, name: name.slice(0, LONGEST_NAME) }, problems };
};

interface Shelves {
  readonly charts: Shelf<OwnChart>;
  /** What was typed and not saved, so that not even a closed browser loses it. */
  readonly drafts: Shelf<OwnChart>;
  /** Takes note of a draft as this tab wrote it; `null` when it is gone. */
  noteDraft(id: string, draft: OwnChart | null): void;
  /** The chart to go on with in place of one that another tab has changed unseen; the same one otherwise. */
  part(chart: OwnChart): OwnChart;
}

const openShelves = ({ kept, keeper, store, post, newSeed, onSaved }: OwnChartsOptions): Shelves => {
  const state = store.getState;
  let known: KnownDrafts = {};

  const split = (id: string, theirs: OwnChart | null): OwnChart | null => {
    const parted = splitOff(state(), id, theirs, `chart-${newSeed()}`);
    if (parted === null) return null;
    store.setState({ chartDrafts: parted.chartDrafts });
    post(parted.notice);
    return parted.chart;
  };

  const noteDraft: Shelves['noteDraft'] = (id, draft) => {
    const { [id]: _, ...others } = known;
    known = draft === null ? others : { ...others, [id]: draft };
  };

  const charts: Shelf<OwnChart> = openShelf<OwnChart>({
    kept,
    keeper,
    name: 'charts',
    noun: 'chart',
    parse,
    onChange: (ownCharts) => {
      for (const id of overtaken(state(), ownCharts)) {
        const chart = split(id, null);
        if (chart !== null) keepDraft(chart);
      }
      const unwritten = ownCharts.filter(({ id }) => !charts.isWritten(id)).map(({ id }) => id);
      store.setState((now) => ({ ownCharts, chartDrafts: { ...followSaved(now, ownCharts), unwritten } }));
      onSaved();
    },
    onWritten: () => {
      // A draft is let go of only when the chart it became is written.
      for (const draft of drafts.items()) {
        const saved = savedChart(charts.items(), draft.id);
        if (saved !== null && isSameChart(saved, draft)) drafts.remove(draft.id);
      }
      store.setState(({ chartDrafts }) => ({ chartDrafts: { ...chartDrafts, unwritten: [] } }));
    },
    onNotice: post,
  });
  const drafts: Shelf<OwnChart> = openShelf<OwnChart>({
    kept,
    keeper,
    name: 'chart-drafts',
    noun: 'unsaved chart',
    parse: parseDraft,
    onChange: (items, elsewhere) => {
      if (!elsewhere) return;
      store.setState({ chartDrafts: followDrafts(state(), known, items) });
      known = knownDrafts(items);
    },
    onNotice: post,
  });
  known = knownDrafts(drafts.items());

  const keepDraft = (chart: OwnChart): void => {
    if (drafts.put(chart)) noteDraft(chart.id, chart);
  };

  const part = (chart: OwnChart): OwnChart => {
    const { id } = chart;
    const isNews = (theirs: OwnChart | null, mine: OwnChart | null | undefined): theirs is OwnChart =>
      theirs !== null && !isSameChart(theirs, chart) && !(mine && isSameChart(theirs, mine));
    const draft = drafts.stored(id);
    const unseen = isNews(draft, known[id]) ? draft : null;
    const saved = isNews(charts.stored(id), savedChart(state().ownCharts, id));
    return unseen !== null || saved ? (split(id, unseen) ?? chart) : chart;
  };
  return { charts, drafts, noteDraft, part };
};

/** A copy of what is chosen as form: a chart of the player's own as it is written, a built-in form in the song's key. */
const copyOfForm = ({ settings, ownCharts, tune }: ChartsState & SongState): Omit<OwnChart, 'id'> => {
  const form = formOf(settings, ownCharts);
  if (typeof form !== 'string') return form;
  const { tonic } = tune.chart;
  const { name, mode } = FORMS[form];
  return { name, mode, tonic, meter: '4/4', text: formAsText(form, tonic) };
};

const emptyChart = ({ tune }: SongState): Omit<OwnChart, 'id'> => {
  const { tonic, mode } = tune.chart;
  return { name: 'Chart', mode, tonic: tonicIn(tonic, mode), meter: '4/4', text: '' };
};

const createCommands = (
  { store, newSeed, chooseForm }: OwnChartsOptions,
  { charts, drafts, noteDraft, part }: Shelves,
): ChartCommands => {
  const state = store.getState;
  const show = (chartDrafts: ChartDrafts): void => store.setState({ chartDrafts });

  /** Shows another state of the open chart and keeps it as long as it is not saved. */
  const keep = (chartDrafts: ChartDrafts): void => {
    show(chartDrafts);
    const present = openDraft(state())?.present;
    if (present === undefined) return;
    const chart = part(present);
    const saved = savedChart(state().ownCharts, chart.id);
    const asSaved = saved !== null && isSameChart(saved, chart) && charts.isWritten(chart.id);
    if (asSaved ? drafts.remove(chart.id) : drafts.put(chart)) noteDraft(chart.id, asSaved ? null : chart);
  };

  const add = (chart: Omit<OwnChart, 'id'>): void => {
    const listed = listCharts(state());
    const ids = listed.map(({ id }) => id);
    const names = listed.map(({ name }) => name);
    const id = freshName(`chart-${newSeed()}`, ids);
    show(addDraft(state(), { ...chart, id, name: freshName(chart.name, names) }));
  };

  const rewrite = (change: (chart: OwnChart) => Partial<OwnChart>): void => {
    const present = openDraft(state())?.present;
    if (present !== undefined) keep(editOpen(state(), change(present)));
  };

  return {
    newChart: () => add(emptyChart(state())),
    duplicateForm: () => add(copyOfForm(state())),
    openChart: (id) => show(openChart(state(), id)),
    closeChart: () => show({ ...state().chartDrafts, open: null }),
    editChart: (change) => keep(editOpen(state(), change)),
    transposeChart: (semitones) => rewrite((chart) => transposeText(readOwnChart(chart), semitones)),
    respellChart: () =>
      rewrite((chart) => {
        const tonic = otherSpelling(chart.tonic, chart.mode);
        return tonic === null ? {} : { tonic, text: respellText(readOwnChart(chart), tonic) };
      }),
    undoChart: () => keep(undoOpen(state())),
    redoChart: () => keep(redoOpen(state())),
    saveChart: () => {
      const present = openDraft(state())?.present;
      if (present === undefined) return;
      const named = parse(present).item ?? present;
      if (!isSameChart(named, present)) keep(editOpen(state(), named));
      const chart = part(openDraft(state())?.present ?? named);
      if (charts.put(chart)) {
        drafts.remove(chart.id);
        noteDraft(chart.id, null);
      }
      if (state().settings.formId !== chart.id) chooseForm(chart.id);
    },
    deleteChart: () => {
      const present = openDraft(state())?.present;
      if (present === undefined) return;
      show(deleteOpen(state()));
      drafts.remove(present.id);
      noteDraft(present.id, null);
      if (savedChart(state().ownCharts, present.id) !== null) charts.remove(present.id);
    },
    restoreChart: () => {
      const { deleted } = state().chartDrafts;
      if (deleted === null) return;
      if (deleted.saved !== null) charts.put(deleted.saved);
      keep(restoreDeleted(state()));
    },
  };
};

/** Opens the player's charts: those saved and those still being written. */
export const openOwnCharts = (options: OwnChartsOptions): OwnCharts => {
  const { store } = options;
  const shelves = openShelves(options);
  const { charts, drafts } = shelves;
  store.setState(({ chartDrafts }) => ({
    ownCharts: charts.items(),
    chartDrafts: {
      ...chartDrafts,
      drafts: Object.fromEntries(
        drafts.items().map((chart) => [chart.id, { past: [], present: chart, future: [] }]),
      ),
    },
  }));
  return {
    commands: createCommands(options, shelves),
    dispose: () => {
      charts.dispose();
      drafts.dispose();
    },
  };
};
