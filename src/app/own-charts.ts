import type { StoreApi } from 'zustand/vanilla';
import { FORMS } from '../core/chart/forms';
import { type OwnChart, otherSpelling, parseOwnChart, readOwnChart, tonicIn } from '../core/chart/own-chart';
import { formAsText } from '../core/chart/print-chart';
import { respellText, transposeText } from '../core/chart/transpose-text';
import type { KeptValues } from '../storage/kept-values';
import {
  addToDesk,
  type ChartDesk,
  deleteOpen,
  editOpen,
  followSaved,
  freshName,
  isSameChart,
  listCharts,
  openDraft,
  openOnDesk,
  redoOpen,
  restoreDeleted,
  savedChart,
  undoOpen,
} from './own-charts-desk';
import type { Notice, SessionState } from './session-state';
import { openShelf, type ReadItem, type Shelf } from './shelf';
import { formOf } from './tune';

/** What the page can ask for about charts of the player's own. Editing concerns the chart open on the desk. */
export interface ChartCommands {
  newChart(): void;
  /** Opens a copy of the form now chosen, in the song's key. */
  duplicateForm(): void;
  openChart(id: string): void;
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
  readonly store: StoreApi<SessionState>;
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

interface Shelves {
  readonly charts: Shelf<OwnChart>;
  /** What was typed and not saved, so that not even a closed browser loses it. */
  readonly drafts: Shelf<OwnChart>;
}

const openShelves = ({ kept, store, post, onSaved }: OwnChartsOptions): Shelves => {
  const charts = openShelf<OwnChart>({
    kept,
    name: 'charts',
    noun: 'chart',
    parse,
    onChange: (ownCharts) => {
      store.setState((state) => ({ ownCharts, chartDesk: followSaved(state, ownCharts) }));
      onSaved();
    },
    onNotice: post,
  });
  const drafts = openShelf<OwnChart>({
    kept,
    name: 'chart-drafts',
    noun: 'unsaved chart',
    parse,
    onChange: () => {},
    onNotice: post,
  });
  return { charts, drafts };
};

/** A copy of what is chosen as form: a chart of the player's own as it is written, a built-in form in the song's key. */
const copyOfForm = ({ settings, ownCharts, tune }: SessionState): Omit<OwnChart, 'id'> => {
  const form = formOf(settings, ownCharts);
  if (typeof form !== 'string') return form;
  const { tonic } = tune.chart;
  const { name, mode } = FORMS[form];
  return { name, mode, tonic, meter: '4/4', text: formAsText(form, tonic) };
};

const emptyChart = ({ tune }: SessionState): Omit<OwnChart, 'id'> => {
  const { tonic, mode } = tune.chart;
  return { name: 'Chart', mode, tonic: tonicIn(tonic, mode), meter: '4/4', text: '' };
};

const createCommands = (
  { store, newSeed, chooseForm }: OwnChartsOptions,
  { charts, drafts }: Shelves,
): ChartCommands => {
  const state = store.getState;
  const show = (chartDesk: ChartDesk): void => store.setState({ chartDesk });

  /** Shows another state of the open chart and keeps it as long as it is not saved. */
  const keep = (chartDesk: ChartDesk): void => {
    show(chartDesk);
    const present = openDraft(state())?.present;
    if (present === undefined) return;
    const saved = savedChart(state().ownCharts, present.id);
    if (saved !== null && isSameChart(saved, present)) drafts.remove(present.id);
    else drafts.put(present);
  };

  const add = (chart: Omit<OwnChart, 'id'>): void => {
    const listed = listCharts(state());
    const ids = listed.map(({ id }) => id);
    const names = listed.map(({ name }) => name);
    const id = freshName(`chart-${newSeed()}`, ids);
    show(addToDesk(state(), { ...chart, id, name: freshName(chart.name, names) }));
  };

  const rewrite = (change: (chart: OwnChart) => Partial<OwnChart>): void => {
    const present = openDraft(state())?.present;
    if (present !== undefined) keep(editOpen(state(), change(present)));
  };

  return {
    newChart: () => add(emptyChart(state())),
    duplicateForm: () => add(copyOfForm(state())),
    openChart: (id) => show(openOnDesk(state(), id)),
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
      charts.put(present);
      drafts.remove(present.id);
      if (state().settings.formId !== present.id) chooseForm(present.id);
    },
    deleteChart: () => {
      const present = openDraft(state())?.present;
      if (present === undefined) return;
      show(deleteOpen(state()));
      drafts.remove(present.id);
      if (savedChart(state().ownCharts, present.id) !== null) charts.remove(present.id);
    },
    restoreChart: () => {
      const { deleted } = state().chartDesk;
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
  store.setState(({ chartDesk }) => ({
    ownCharts: charts.items(),
    chartDesk: {
      ...chartDesk,
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
