import { FORMS, isFormId } from '../../core/chart/forms';
import { asItSays, type OwnChart, readOwnChart } from '../../core/chart-text/own-chart';
import { formAsText } from '../../core/chart-text/print-chart';
import { respellText, transposeText } from '../../core/chart-text/transpose-text';
import { otherSpelling, tonicIn } from '../../core/chart-text/written-key';
import type { ImportedChart } from '../../core/sheets/sheet-bars';
import { withOwnChart } from '../../core/song/chart-choices';
import {
  addDraft,
  deleteOpen,
  editOpen,
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
import type { ChartDrafts } from '../../core/song/drafts';
import { withForm } from '../../core/song/key-coupling';
import { formOf, STANDARD_FORM } from '../../core/song/tune';
import { cutText, LONGEST_NAME } from '../../core/theory/kept-text';
import type { SheetReader } from '../../sheet/sheet-reader';
import type { Join } from '../song/feature';
import { orElse } from '../song/or-else';
import type { SongState } from '../song/song-state';
import { type ChartShelves, type ChartStand, openChartShelves, parseItem } from './chart-shelves';
import type { ChartsState } from './charts-state';

/** What the page can ask for about charts of the player's own. Editing concerns the open chart. */
export interface ChartCommands {
  newChart(): void;
  /** Opens a file of sheet music as a new chart; says in sentences what it left out, or why nothing could be read. */
  openSheet(file: Uint8Array): Promise<readonly string[]>;
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
  /** Keeps a chart that came along with a song. */
  keepChart(chart: OwnChart): void;
}

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

/** What every command writes the open chart with. */
interface Pen {
  /** Shows other drafts without keeping them. */
  show(drafts: ChartDrafts): void;
  /** Shows another state of the open chart and keeps it as long as it is not saved. */
  keep(drafts: ChartDrafts): void;
}

const createPen = ({ store }: ChartStand, { charts, drafts, noteDraft, part }: ChartShelves): Pen => {
  const state = store.getState;
  const show = (chartDrafts: ChartDrafts): void => store.setState({ chartDrafts });
  return {
    show,
    keep: (chartDrafts) => {
      show(chartDrafts);
      const present = openDraft(state())?.present;
      if (present === undefined) return;
      const chart = part(present);
      const saved = savedChart(state().ownCharts, chart.id);
      const asSaved = saved !== null && isSameChart(saved, chart) && charts.isWritten(chart.id);
      if (asSaved ? drafts.remove(chart.id) : drafts.put(chart)) noteDraft(chart.id, asSaved ? null : chart);
    },
  };
};

/** Follows which form stood before the one that is chosen, so that it can come back where a chart is deleted. */
const rememberForm = ({ store }: ChartStand) => {
  const others: string[] = [];
  let chosen = store.getState().settings.formId;
  const leave = store.subscribe(({ settings: { formId } }) => {
    if (formId === chosen) return;
    others.push(chosen);
    chosen = formId;
  });
  /** The form chosen last that is still there; the standard one where there was none. */
  const formBefore = (): string =>
    others.findLast(
      (id) => id !== chosen && (isFormId(id) || savedChart(store.getState().ownCharts, id) !== null),
    ) ?? STANDARD_FORM;
  return { leave, formBefore };
};

type SavingCommands = Pick<ChartCommands, 'saveChart' | 'deleteChart' | 'restoreChart' | 'keepChart'>;

const createSavingCommands = (
  { store, apply }: ChartStand,
  { charts, drafts, noteDraft, part }: ChartShelves,
  { show, keep }: Pen,
  formBefore: () => string,
): SavingCommands => {
  const state = store.getState;
  /** The chart deleted last, where it was being played. */
  let goneFromStand: string | null = null;
  const dropDraft = (id: string): void => {
    drafts.remove(id);
    noteDraft(id, null);
  };
  return {
    saveChart: () => {
      const present = openDraft(state())?.present;
      if (present === undefined) return;
      const named = parseItem(present).item ?? present;
      if (!isSameChart(named, present)) keep(editOpen(state(), named));
      const chart = part(openDraft(state())?.present ?? named);
      if (charts.put(chart)) dropDraft(chart.id);
      const { settings } = state();
      const chosen = orElse(
        () => withOwnChart(settings, chart),
        () => withForm(settings, chart.id),
      );
      apply(chosen);
    },
    deleteChart: () => {
      const present = openDraft(state())?.present;
      if (present === undefined) return;
      show(deleteOpen(state()));
      dropDraft(present.id);
      if (savedChart(state().ownCharts, present.id) === null) return;
      const { settings } = state();
      goneFromStand = settings.formId === present.id ? present.id : null;
      if (goneFromStand !== null) apply(withForm(settings, formBefore()));
      charts.remove(present.id);
    },
    restoreChart: () => {
      const { deleted } = state().chartDrafts;
      if (deleted === null) return;
      if (deleted.saved !== null) charts.put(deleted.saved);
      if (goneFromStand !== null && deleted.saved?.id === goneFromStand)
        apply(withForm(state().settings, goneFromStand));
      keep(restoreDeleted(state()));
    },
    keepChart: (chart) => void charts.put(chart),
  };
};

/** What a file holds; a sentence too where it cannot be read at all. */
const openedBy = async (
  sheets: SheetReader | undefined,
  file: Uint8Array,
): Promise<ImportedChart | string> => {
  const failed = 'What reads files could not be fetched. Try again with the network on.';
  return (await sheets?.read(file).catch(() => failed)) ?? failed;
};

const createWritingCommands = (
  { store, newSeed }: ChartStand,
  { show, keep }: Pen,
  sheets: SheetReader | undefined,
): Omit<ChartCommands, keyof SavingCommands> => {
  const state = store.getState;
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
    openSheet: async (file) => {
      const read = await openedBy(sheets, file);
      if (typeof read === 'string') return [read];
      add(
        asItSays({ ...emptyChart(state()), id: '', name: cutText(read.name, LONGEST_NAME), text: read.text }),
      );
      return [
        `“${read.name}” is open as a new chart. Look it through, and save it to keep it.`,
        ...read.left,
      ];
    },
    duplicateForm: () => add(copyOfForm(state())),
    openChart: (id) => show(openChart(state(), id)),
    closeChart: () => show({ ...state().chartDrafts, open: null }),
    editChart: (change) => {
      const present = openDraft(state())?.present;
      if (present === undefined) return;
      const changed = { ...present, ...change };
      const said = orElse(
        () => asItSays(changed),
        () => changed,
      );
      keep(editOpen(state(), said));
    },
    transposeChart: (semitones) => rewrite((chart) => transposeText(readOwnChart(chart), semitones)),
    respellChart: () =>
      rewrite((chart) => {
        const tonic = otherSpelling(chart.tonic, chart.mode);
        return tonic === null ? {} : { tonic, text: respellText(readOwnChart(chart), tonic) };
      }),
    undoChart: () => keep(undoOpen(state())),
    redoChart: () => keep(redoOpen(state())),
  };
};

/** The player's charts: those saved and those still being written. */
export const joinCharts: Join<ChartsState, ChartCommands, SheetReader | undefined, SongState> = (
  stand,
  sheets,
) => {
  const { store } = stand;
  const shelves = openChartShelves(stand);
  const pen = createPen(stand, shelves);
  const memory = rememberForm(stand);
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
  if (charts.items().length > 0) stand.takeSavedCharts();
  return {
    commands: {
      ...createWritingCommands(stand, pen, sheets),
      ...createSavingCommands(stand, shelves, pen, memory.formBefore),
    },
    dispose: () => {
      memory.leave();
      charts.dispose();
      drafts.dispose();
    },
  };
};
