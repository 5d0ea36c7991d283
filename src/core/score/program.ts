import type { Chart } from '../chart/chart';
import type { Bpm, PitchClass, Ticks } from '../theory/units';
import type { NoteEvent, Score } from './score';
import type { Style } from './style';

/** Bars to repeat, as bar indices of the chart, both included. */
export interface BarRange {
  readonly from: number;
  readonly to: number;
}

/** How the song runs over time. */
export interface Plan {
  readonly countInBars: 0 | 1 | 2;
  readonly intro: 'none' | 'turnaround' | 'pickup' | 'drums';
  /** Number of choruses, or `null` to go on until stopped. */
  readonly choruses: number | null;
  readonly arc: 'steady' | 'breathe' | 'trade fours' | 'trade twos';
  readonly ending: 'cadence' | 'held' | 'stop';
  readonly ritard: boolean;
  readonly repeat: BarRange | null;
  readonly countBetween: boolean;
  readonly keys:
    | { readonly kind: 'same' }
    | { readonly kind: 'fourths' }
    | { readonly kind: 'list'; readonly keys: readonly PitchClass[] };
  readonly tempo:
    | { readonly kind: 'fixed' }
    | { readonly kind: 'ramp'; readonly from: Bpm; readonly step: number; readonly every: number }
    | { readonly kind: 'alternate'; readonly slow: Bpm };
  /** The band plays `play` bars, then is silent for `rest` bars, over and over. */
  readonly dropOut: { readonly play: number; readonly rest: number } | null;
  readonly sounding: 'band' | 'click' | 'drums' | 'bass';
}

/** Everything that determines what the band plays. */
export interface Program {
  /** One chorus in the song key. */
  readonly chart: Chart;
  readonly style: Style;
  /** The player's target tempo. */
  readonly tempo: Bpm;
  readonly plan: Plan;
  /**
   * What the lead plays, by song key: for each chorus in turn the notes of a whole chorus, on the straight grid (the
   * feel swings them). Keys left out have no lead.
   */
  readonly leads?: Readonly<Partial<Record<number, readonly (readonly NoteEvent[])[]>>>;
}

export interface TempoStep {
  /** From the section's start; the first step is at 0. */
  readonly at: Ticks;
  readonly bpm: Bpm;
}

/** A stretch of music the transport plays in one go: a count-in, an intro, one chorus (or repeated range), an ending. */
export interface Section {
  readonly index: number;
  readonly kind: 'count-in' | 'intro' | 'chorus' | 'ending';
  /** Which chorus this is or leads into, from 0. */
  readonly chorus: number;
  /** The bars that sound, tick 0 = the section's start, in the key of this chorus. */
  readonly chart: Chart;
  /** For each bar of `chart`, its index in the whole chorus; `null` in count-ins, intros and endings. */
  readonly barNumbers: readonly (number | null)[];
  readonly score: Score;
  readonly tempo: readonly TempoStep[];
  /** True when nothing follows. */
  readonly last: boolean;
}
