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

/** How the tones are set in a box. */
export interface ToneLayout {
  /** Font size of the holes, in CSS pixels. */
  readonly font: number;
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
const HEAD_EMS = 2.35;
/** A row's height. */
const ROW_EMS = 1.06;
/** Height of the line that takes the high octave, and the size of its letters. */
export const FOLDED_EMS = 0.46;

/** About how wide a sound's tab is, in ems. */
export const tabEms = (sound: FitSound, style: TabStyle): number =>
  [...tab(sound, style)].reduce((sum, sign) => sum + (SIGN_EMS[sign] ?? DIGIT_EMS), 0);

const cellEms = (sounds: readonly FitSound[], style: TabStyle): number =>
  sounds.reduce((sum, sound) => sum + tabEms(sound, style) + SPACE_EMS, 0);

const columnEms = (rows: readonly ToneRow[], register: Register, style: TabStyle): number =>
  Math.max(0.5, ...rows.map(({ cells }) => cellEms(cells[register], style))) + SPACE_EMS;

/** The largest letters there are: beyond this a row's signs no longer read as one word. */
const LARGEST = 92;

/** Folding must be worth it: the letters grow by this much at least. */
const WORTH_FOLDING = 1.12;

/**
 * The largest letters at which every row and column fits a box, with the high octave in one line beneath where that
 * lets them grow; letters that are large enough already leave it in its column.
 */
export const toneLayout = (
  rows: readonly ToneRow[],
  { width, height }: Size,
  style: TabStyle,
  enough: number,
): ToneLayout => {
  const widths = REGISTERS.map((register) => columnEms(rows, register, style));
  const [low = 0, middle = 0, high = 0] = widths;
  const open = Math.min(LARGEST, width / (HEAD_EMS + low + middle + high), height / (rows.length * ROW_EMS));
  const folded = Math.min(
    LARGEST,
    width / (HEAD_EMS + low + middle),
    height / (rows.length * ROW_EMS + FOLDED_EMS * 1.5),
  );
  const fold = open < enough && folded > open * WORTH_FOLDING;
  return { font: Math.floor(fold ? folded : open), folded: fold };
};
