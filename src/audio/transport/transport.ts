import type { Playhead } from '../../core/arranger/playhead';
import type { Program, Section } from '../../core/arranger/program';
import type { SectionSource } from './form-position';
import type { HeldPlace } from './held-place';
import type { ScheduledNote } from './scheduled-note';
import type { Timeline } from './timeline';

/** The side that sounds. */
export interface NoteSink {
  start(note: ScheduledNote): void;
  /** Takes back everything that would start at or after a time and ends what is held then, without a click. */
  cut(at: number): void;
}

export interface TransportOptions {
  /** Seconds of the audio clock. */
  readonly now: () => number;
  readonly source: SectionSource;
  readonly sink: NoteSink;
  /** Seconds of music handed over ahead of time. */
  readonly window?: number;
  /** Seconds between asking for a change and hearing it: more than the audio thread works ahead. */
  readonly cutAfter?: number;
}

/** Hands the notes of a program over, a little ahead of when they sound. */
export interface Transport {
  /** Starts a program: its first section begins at `at` (audio seconds). */
  start(program: Program, fromBar: number, at: number): void;
  /** Hands over what is due. Call about every 100 ms. */
  tick(): void;
  stop(): void;
  /** Stops and keeps the bar that is heard, to go on from; null when stopped already. */
  hold(heard: Playhead): HeldPlace | null;
  /** Goes on from a held place, whose bar begins at `at` (audio seconds). */
  goOn(held: HeldPlace, at: number): void;
  /** Goes on with another program from the same place, a moment from now. */
  change(program: Program): void;
  /** Goes to a bar of the chorus at the next beat. */
  seek(bar: number): void;
  /** Cuts and fills again without moving, for changed instruments or temperament. */
  refill(): void;
  /** The notes a changed program would need first, so that their sounds can be made beforehand. */
  preview(program: Program, seconds: number): readonly ScheduledNote[];
  /** The notes still to come of the current section and all of the next, in the order they will sound. */
  ahead(): readonly ScheduledNote[];
  timeline(): Timeline;
  /** The section after the one at a time; null when none. */
  sectionAfter(time: number): Section | null;
  playing(): boolean;
  /** Notes handed over after their time, and notes left out because their time had long passed. */
  late(): number;
}
