import type { Bar, Chart } from '../chart/chart';
import type { Chord } from '../theory/chord';
import type { NoteNames } from '../theory/note-names';
import { chordsEms } from './chord-ems';

/**
 * How a song is laid out on one sheet. All lengths in millimetres. The sheet is planned for the smaller of the two
 * papers in each direction: A4 is the narrower (210 wide), Letter the shorter (279.4 high), both less 12 at each
 * edge and a little for rounding.
 */
export const PAPER = { width: 185, height: 254 } as const;

const HEAD = 23;
const GAP = 5;
const CAPTION = 7.4;
const LEGEND = 7;
/** The space for one line of scale runs, and its heading. */
const SCALE_LINE = 12.5;
const SCALE_HEAD = 6.5;
/** What tab adds to a line of the chart. */
export const TAB_LINE = 5;

/** A comb's drawing in its own units; the height of its rows is the plan's. */
export const COMB = { gutter: 30, cell: 22, holes: 16, edge: 1 } as const;

/** Bars a line, and lines side by side where a chart is too long for one column. */
const BARS_A_LINE = 4;
const LONGEST_COLUMN = 40;
/** More drawings than this on a sheet would each be too small to read. */
const MOST_COMBS = 9;

/** Heights of a line of the chart and, in a comb's units, of a row of sounds: the roomiest first. */
const SIZES = [
  { rowHeight: 18, soundRow: 28 },
  { rowHeight: 16, soundRow: 28 },
  { rowHeight: 15, soundRow: 25 },
  { rowHeight: 13, soundRow: 25 },
  { rowHeight: 13, soundRow: 22 },
  { rowHeight: 11, soundRow: 22 },
  { rowHeight: 9.5, soundRow: 22 },
  { rowHeight: 11, soundRow: 16 },
  { rowHeight: 9.5, soundRow: 16 },
  { rowHeight: 8, soundRow: 15 },
] as const;

/** Up to so many drawings are wanted large. */
const LARGE_COMBS = 4;

/** Rows that hold a degree and, below it, the note's name. */
const NAMED_ROW = 22;

/** Rows of sounds a drawing needs above and below the holes. */
export interface SoundRows {
  readonly above: number;
  readonly below: number;
}

/** What is to be put on the sheet. */
export interface PrintLoad {
  readonly bars: number;
  readonly tabbed: boolean;
  /** Drawings wanted: one a chord, the most important first, and at the end one for the scale. */
  readonly combs: readonly SoundRows[];
  readonly holes: number;
  /** Octaves of the scale; 0 without a scale. */
  readonly scaleRuns: number;
}

/** Drawings side by side, their holes in line. */
export interface CombLine extends SoundRows {
  readonly combs: readonly number[];
}

/** How a song is laid out on one sheet of paper. */
export interface PrintPlan {
  /** Columns of four bars. */
  readonly chartColumns: 1 | 2;
  readonly rowHeight: number;
  /** Drawings side by side. */
  readonly combColumns: 2 | 3;
  /** Lines of drawings, each with its drawings' places in the load; those side by side share their rows. */
  readonly combLines: readonly CombLine[];
  /** Height of a row of sounds, in a comb's units. */
  readonly soundRow: number;
  /** Whether there is room for the notes' names. */
  readonly named: boolean;
}

/** The size of a comb's drawing in its own units. */
export const combSize = (
  holes: number,
  soundRows: number,
  soundRow: number,
): { readonly width: number; readonly height: number } => ({
  width: COMB.gutter + holes * COMB.cell + 2 * COMB.edge,
  height: soundRows * soundRow + COMB.holes + 2 * COMB.edge,
});

const scaleHeight = (runs: number): number =>
  runs === 0 ? 0 : SCALE_HEAD + Math.ceil(runs / 2) * SCALE_LINE;

/** The height of everything on the sheet. */
const heightOf = (load: PrintLoad, plan: PrintPlan): number => {
  const rows = Math.ceil(load.bars / (BARS_A_LINE * plan.chartColumns));
  const drawn = (PAPER.width - (plan.combColumns - 1) * GAP) / plan.combColumns;
  const combs = plan.combLines.reduce((sum, { above, below }) => {
    const { width, height } = combSize(load.holes, above + below, plan.soundRow);
    return sum + (height / width) * drawn + CAPTION;
  }, 0);
  const chart = rows * (plan.rowHeight + (load.tabbed ? TAB_LINE : 0));
  return HEAD + chart + GAP + combs + LEGEND + scaleHeight(load.scaleRuns);
};

/** Lays the first chords and the scale out in lines. */
const layCombs = (combs: readonly SoundRows[], count: number, columns: number): readonly CombLine[] => {
  const shown = [...combs.slice(0, count - 1).map((_, i) => i), combs.length - 1];
  return Array.from({ length: Math.ceil(count / columns) }, (_, line) => {
    const own = shown.slice(line * columns, (line + 1) * columns);
    return {
      combs: own,
      above: Math.max(...own.map((i) => combs[i]?.above ?? 0)),
      below: Math.max(...own.map((i) => combs[i]?.below ?? 0)),
    };
  });
};

/** Drawings side by side, the larger first: up to four stand two to a line, more do while their notes are named. */
const columnsFor = (combs: number): readonly (2 | 3)[] => (combs > LARGE_COMBS ? [2, 3] : [2]);

const isReadable = ({ combColumns, combLines, named }: PrintPlan): boolean =>
  named || combColumns === 3 || combLines.flatMap(({ combs }) => combs).length <= LARGE_COMBS;

/** The layouts to try, the fullest and roomiest first. */
function* plansFor(load: PrintLoad): Generator<PrintPlan> {
  const chartColumns = load.bars > LONGEST_COLUMN ? 2 : 1;
  for (let count = Math.min(load.combs.length, MOST_COMBS); count > 0; count -= 1) {
    for (const combColumns of columnsFor(count)) {
      const combLines = layCombs(load.combs, count, combColumns);
      for (const size of SIZES) {
        yield { chartColumns, combColumns, combLines, named: size.soundRow >= NAMED_ROW, ...size };
      }
    }
  }
}

/** Chooses the roomiest layout that fits one sheet, leaving drawings out only where nothing else helps. */
export const planPrint = (load: PrintLoad): PrintPlan => {
  for (const plan of plansFor(load)) {
    if (isReadable(plan) && heightOf(load, plan) <= PAPER.height) return plan;
  }
  const chartColumns = load.bars > LONGEST_COLUMN ? 2 : 1;
  return { chartColumns, rowHeight: 7, combColumns: 2, combLines: [], soundRow: 14, named: false };
};

/** The chords of a chart, those that sound longest first. */
export const chordsByTime = (chart: Chart): readonly Chord[] => {
  const times = new Map<string, { readonly chord: Chord; readonly ticks: number }>();
  for (const { chord, length } of chart.bars.flatMap(({ chords }) => chords)) {
    const known = times.get(chord.symbol)?.ticks ?? 0;
    times.set(chord.symbol, { chord, ticks: known + length });
  }
  return [...times.values()].sort((a, b) => b.ticks - a.ticks).map(({ chord }) => chord);
};

/** The letter height of a bar's chords: as large as the row allows, smaller where several must share the width. */
export const chordSize = (
  { chords }: Bar,
  {
    rowHeight,
    width,
    names,
  }: { readonly rowHeight: number; readonly width: number; readonly names: NoteNames },
): number => Math.min(rowHeight * 0.52, 9, width / chordsEms(chords, names));
