import type { Chart } from '../chart/chart';
import type { Harp, Sound } from '../harp/harp';
import type { TechniqueChoice } from '../harp/reach';
import type { TabStyle } from '../harp/tab';
import type { NoteEvent } from '../score/score';
import type { Sounding } from '../score/silence';
import type { Bpm, Seconds } from '../theory/units';

/** What the band does during a step. */
export interface WarmUpBand {
  /** What sounds, over and over, `passes` times. */
  readonly chart: Chart;
  readonly passes: number;
  readonly sounding: Sounding;
}

/** Something to read from a bar on, until the next cue. */
export interface Cue {
  /** Counted from the step's start, over all passes. */
  readonly bar: number;
  readonly text: string;
  /** The same in one word, where the sound is shown by itself: `Hold`, `Your turn`. */
  readonly word: string;
  /** The one note it is about, or null. */
  readonly sound: Sound | null;
}

/** One step of a routine. */
export interface WarmUpStep {
  readonly title: string;
  readonly instruction: string;
  /** Null while resting: nothing sounds for `seconds`. */
  readonly band: WarmUpBand | null;
  readonly tempo: Bpm;
  readonly seconds: Seconds;
  readonly cues: readonly Cue[];
  /** Notes of the harp voice, from the step's start, over all passes. */
  readonly lead: readonly NoteEvent[];
}

/** A routine that runs by itself. */
export interface WarmUp {
  readonly steps: readonly WarmUpStep[];
  /** All steps together, rests included. */
  readonly seconds: Seconds;
  /** To be read before starting. */
  readonly cautions: readonly string[];
}

/** What a warm-up is made for. */
export interface WarmUpSpec {
  /** The song to warm up for. */
  readonly chart: Chart;
  readonly harp: Harp;
  readonly technique: TechniqueChoice;
  /** The song's tempo; the warm-up keeps to a moderate one near it. */
  readonly tempo: Bpm;
  /** Long : short of off-beats, as the band plays them. */
  readonly swing: number;
  readonly tabStyle: TabStyle;
  readonly seed: number;
  /** The bends that are wanted; all in reach when absent. */
  readonly bends?: readonly Sound[];
  /** How long the bends may take, in seconds; the usual time when absent. */
  readonly bendSeconds?: { readonly least: number; readonly most: number };
}
