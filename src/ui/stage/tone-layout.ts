import type { FitChord, FitSound } from '../../core/fit/fit';
import { toneSounds } from '../../core/fit/tone-sounds';
import { REGISTERS, type Register } from '../../core/harp/reach';
import { type TabStyle, tab } from '../../core/harp/tab';
import type { ChordTone } from '../../core/theory/chord';
import { tonesWithBass } from '../../core/theory/chords';
import type { Size } from './use-size';

/** A chord tone with its sounds, octave by octave. */
export interface ToneRow {
  readonly tone: ChordTone;
  readonly cells: Readonly<Record<Register, readonly FitSound[]>>;
}

/** The tones of a chord as Stage lists them. */
export const toneRows = (fit: FitChord): readonly ToneRow[] =>
  tonesWithBass(fit.chord).map((tone) => ({
    tone,
    cells: {
      low: toneSounds(fit, tone, 'low'),
      middle: toneSounds(fit, tone, 'middle'),
      high: toneSounds(fit, tone, 'high'),
    },
  }));

/** Letters of 44 px capitals on a large screen, of 30 on a small one: what gives way below it need not above. */
export const enoughFor = (): number => (Math.min(window.innerWidth, window.innerHeight) < 700 ? 46 : 67);

/** How the tones are set in a box. */
export interface ToneLayout {
  /** Font size of the holes, in CSS pixels. */
  readonly font: number;
  /** Height of a row, in ems. */
  readonly row: number;
  /** Whether the high octave stands in one line beneath. */
  readonly folded: boolean;
}

/** Widths of tab signs in ems of the page's face at weight 700, measured in the page. */
const SIGN_EMS: Readonly<Record<string, number>> = {
  '↑': 0.63,
  '↓': 0.63,
  '/': 0.47,
  '○': 0.72,
  '-': 0.45,
  "'": 0.26,
  B: 0.68,
  D: 0.72,
  O: 0.77,
  o: 0.6,
};
const DIGIT_EMS = 0.62;
/** Between two sounds of a cell, and after a column. */
const SPACE_EMS = 0.34;
/** The degree's chip and the note's name before the first column. */
const HEAD_EMS = 2.2;
/** A row's height, and the least it can be: capitals and arrows still have a fifth of it between them. */
const ROOMY = 1.06;
const TIGHT = 0.92;
/** Height of the line that takes the high octave, and the size of its letters. */
const FOLDED_EMS = 0.46;

/** About how wide a sound's tab is, in ems. */
const tabEms = (sound: FitSound, style: TabStyle): number =>
  [...tab(sound, style)].reduce((sum, sign) => sum + (SIGN_EMS[sign] ?? DIGIT_EMS), 0);

const cellEms = (sounds: readonly FitSound[], style: TabStyle): number =>
  sounds.reduce((sum, sound) => sum + tabEms(sound, style) + SPACE_EMS, 0);

const columnEms = (rows: readonly ToneRow[], register: Register, style: TabStyle): number =>
  Math.max(0.5, ...rows.map(({ cells }) => cellEms(cells[register], style))) + SPACE_EMS;

/** The largest letters there are: beyond this a row's signs no longer read as one word. */
const LARGEST = 92;

/** Folding must be worth it: the letters grow by this much at least. */
const WORTH_FOLDING = 1.12;

/** In the line of the high octave, in ems of its own: its name, and beside each tone's sounds its chip and the gaps. */
const HIGH = { name: 2.2, chip: 1.5, gap: 1.2 } as const;

/** How wide the line of the high octave is, in ems of the letters above it. */
const highEms = (rows: readonly ToneRow[], style: TabStyle): number =>
  rows
    .filter(({ cells }) => cells.high.length > 0)
    .reduce<number>((sum, { cells }) => sum + HIGH.chip + HIGH.gap + cellEms(cells.high, style), HIGH.name) *
  FOLDED_EMS;

interface Room extends Size {
  /** Width of the line that takes the high octave, in ems. */
  readonly high: number;
  /** Widths of the columns of the low, middle and high octave, in ems. */
  readonly columns: readonly number[];
  readonly rows: number;
}

/** The largest letters at which every row and column fits, with the high octave in one line beneath or not. */
const lettersIn = ({ width, height, columns, rows, high }: Room, row: number, folded: boolean): number => {
  const across = columns.slice(0, folded ? 2 : 3).reduce((sum, ems) => sum + ems, HEAD_EMS);
  const down = rows * row + (folded ? FOLDED_EMS * 1.5 : 0);
  return Math.min(LARGEST, width / Math.max(across, folded ? high : 0), height / down);
};

/**
 * How the tones stand in a box: letters as large as they can be. Where they would be smaller than is enough, rows
 * stand closer, and the high octave in one line beneath.
 */
export const toneLayout = (
  rows: readonly ToneRow[],
  size: Size,
  style: TabStyle,
  enough: number,
): ToneLayout => {
  const room = {
    ...size,
    rows: rows.length,
    high: highEms(rows, style),
    columns: REGISTERS.map((register) => columnEms(rows, register, style)),
  };
  const ways = [
    { row: ROOMY, folded: false, worth: 1 },
    { row: TIGHT, folded: false, worth: 1 },
    { row: ROOMY, folded: true, worth: WORTH_FOLDING },
    { row: TIGHT, folded: true, worth: WORTH_FOLDING },
  ].map((way) => ({ ...way, font: lettersIn(room, way.row, way.folded) }));
  const best = ways.reduce((kept, way) =>
    kept.font >= enough || way.font / way.worth <= kept.font / kept.worth ? kept : way,
  );
  return { row: best.row, folded: best.folded, font: Math.floor(best.font) };
};

/** The words before a line of sounds take so much of it. */
export const WORDS_EMS = 1.7;

/** Widths of signs are rounded: so much of a line is counted on. */
const SURE = 0.9;

/** Lines that sounds take at so many ems across, each whole. */
const linesOf = (sounds: readonly FitSound[], style: TabStyle, ems: number): number =>
  sounds.reduce(
    ({ lines, left }, sound) => {
      const wide = tabEms(sound, style) + SPACE_EMS;
      return wide <= left ? { lines, left: left - wide } : { lines: lines + 1, left: ems - wide };
    },
    { lines: 1, left: ems },
  ).lines;

/** The largest letters at which groups of sounds fit a box, each group beginning a line; rows closer where needed. */
export const plainLayout = (
  groups: readonly (readonly FitSound[])[],
  { width, height }: Size,
  style: TabStyle,
  enough: number,
): Pick<ToneLayout, 'font' | 'row'> => {
  const largest = (row: number): number => {
    for (let font = LARGEST; font > 12; font -= 1) {
      const across = (width / font) * SURE - WORDS_EMS;
      const lines = groups.reduce((sum, group) => sum + linesOf(group, style, across), 0);
      if (lines * row * font <= height) return font;
    }
    return 12;
  };
  const roomy = largest(ROOMY);
  return roomy >= enough ? { font: roomy, row: ROOMY } : { font: largest(TIGHT), row: TIGHT };
};
