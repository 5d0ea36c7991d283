import type { Chord, NoteName } from '../theory/chord';
import type { KeyMode } from '../theory/pitch';
import type { PitchClass, Ticks } from '../theory/units';

/** Meters a chart may be in. */
export const METER_NAMES = ['4/4', '3/4', '12/8', '6/8'] as const;

/** The longest chart. */
export const MOST_BARS = 256;

/** A meter by its signature; in 12/8 and 6/8 a beat is three eighths. */
export type MeterName = (typeof METER_NAMES)[number];

/** How a bar divides. In compound meters the beat is the dotted quarter (720 ticks). */
export interface Meter {
  readonly name: MeterName;
  readonly beats: number;
  readonly beatTicks: Ticks;
}

/** A chord and how long it lasts. */
export interface ChordSpan {
  readonly chord: Chord;
  /** From the start of the chart. */
  readonly at: Ticks;
  readonly length: Ticks;
  /**
   * What the band does otherwise than the feel has it: `rest`, nothing (the chord is the one before), or `stop`, one
   * stroke and then nothing.
   */
  readonly band?: 'rest' | 'stop';
}

/** Where a bar stands in a tune of named sections. */
export interface BarPlace {
  /** The section's name as written: `A`, `Verse`. */
  readonly section: string;
  /** From 0, counted through the section as it is played. */
  readonly bar: number;
  /** It belongs to an introduction: the first chorus alone has it. Such bars stand before all others. */
  readonly once?: true;
}

/** The key of a section. */
export interface BarKey {
  readonly tonic: NoteName;
  readonly mode: KeyMode;
}

/** A bar of the chart with its chords. */
export interface Bar {
  readonly at: Ticks;
  readonly length: Ticks;
  /** Contiguous, filling the bar. */
  readonly chords: readonly ChordSpan[];
  /** Missing where the tune has no named sections. */
  readonly place?: BarPlace;
  /** The key of its section, where that is another than the chart's. */
  readonly key?: BarKey;
}

/** A form in a key: the bars of one chorus, before them an introduction where it has one. */
export interface Chart {
  readonly title: string;
  readonly key: PitchClass;
  readonly mode: KeyMode;
  /** The key's spelled tonic: `Bb`, `F#`. */
  readonly tonic: NoteName;
  readonly meter: Meter;
  readonly bars: readonly Bar[];
  readonly length: Ticks;
  /** Beats before the first bar, fewer than a bar has, in ticks from their own beginning. */
  readonly pickUp?: Bar;
}

/** Bars in a row, as indices of a chart, both included. */
export interface BarRange {
  readonly from: number;
  readonly to: number;
}
