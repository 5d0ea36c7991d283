import * as v from 'valibot';
import { TAB_STYLES, type TabStyle } from '../harp/tab';
import { NOTE_SYSTEMS, type NoteSystem } from '../theory/note-names';
import { setting, shortText } from './setting';

/** The two drawings of the harp, and both side by side. */
export const DRAWINGS = ['comb', 'keys', 'both'] as const;
export type Drawing = (typeof DRAWINGS)[number];

export const LOOKS = ['system', 'day', 'night'] as const;
export type Look = (typeof LOOKS)[number];

/** What a screen reader is told while the band plays. */
export const ANNOUNCEMENTS = ['off', 'places', 'chords'] as const;
export type Announcements = (typeof ANNOUNCEMENTS)[number];

/** What is written beside tab that stands alone. */
export const BESIDE_TAB = ['nothing', 'notes', 'degrees', 'both'] as const;
export type BesideTab = (typeof BESIDE_TAB)[number];

/** How things are shown. */
export const PAGE_SETTINGS = {
  /** Whether the player is still to be asked which harp there is. */
  askHarp: setting('question about the harp', false, v.boolean()),
  /** Whether the page has offered to have the browser keep everything for good. */
  keepingOffered: setting('offer to keep everything', false, v.boolean()),
  tabStyle: setting<TabStyle>('tab style', 'arrows', v.picklist(TAB_STYLES.map(({ id }) => id))),
  /** What notes, keys and harps are called; what is typed stays in English names. */
  noteNames: setting<NoteSystem>('names of notes', 'english', v.picklist(NOTE_SYSTEMS)),
  besideTab: setting<BesideTab>('choice of what stands beside tab', 'nothing', v.picklist(BESIDE_TAB)),
  /** What is safe, leans and resolves, in place of degrees. */
  plainWords: setting('choice of plain words', false, v.boolean()),
  drawing: setting<Drawing>('drawing', 'comb', v.picklist(DRAWINGS)),
  /** Whether the harp is held, and so drawn, with its low notes on the right. */
  mirrored: setting('side of the low notes', false, v.boolean()),
  /** Whether hole numbers are in large print. */
  largeHoles: setting('size of hole numbers', false, v.boolean()),
  /** The map shows expected cents of natural notes in place of their names. */
  showCents: setting('cents on the map', false, v.boolean()),
  /** Id of the scale shown as a second layer, or `none`. */
  layer: setting('scale layer', 'minor-blues', shortText),
  announcements: setting<Announcements>('choice of announcements', 'off', v.picklist(ANNOUNCEMENTS)),
  /** Whether what is played is written down in the log. */
  keepLog: setting('choice of a log', true, v.boolean()),
  look: setting<Look>('day or night look', 'system', v.picklist(LOOKS)),
} as const;
