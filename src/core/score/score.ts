import type { Midi, Ticks } from '../theory/units';

/** The parts of a score (`second` is a second chord player), in the order in which simultaneous events stand. */
export const PART_IDS = ['drums', 'bass', 'chords', 'second', 'lead', 'click'] as const;
export type PartId = (typeof PART_IDS)[number];

/** Drums and click carry the General MIDI percussion key as `pitch`. */
export interface NoteEvent {
  readonly part: PartId;
  /** From the start of the score, swing included. */
  readonly at: Ticks;
  readonly length: Ticks;
  readonly pitch: Midi;
  /** 1–127. */
  readonly velocity: number;
  /** Semitones away from `pitch` at the start of the note, gliding to 0 within `glideTicks`. */
  readonly glideFrom?: number;
  readonly glideTicks?: Ticks;
}

/** Note events sorted by `at`, then part, then pitch. Holds no tempo: tempo lives in the section. */
export interface Score {
  readonly length: Ticks;
  readonly events: readonly NoteEvent[];
}
