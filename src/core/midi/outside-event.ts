import type { PartId } from '../score/score';

/** A note of the band, for whoever plays along outside of the page. */
export interface OutsideNote {
  readonly kind: 'on' | 'off';
  /** Page time in ms at which it leaves the loudspeaker. */
  readonly at: number;
  readonly part: PartId;
  /** Drums have General MIDI percussion keys. */
  readonly pitch: number;
  /** 1–127. */
  readonly velocity: number;
}

/** One of the 24 pulses of a quarter note. */
export interface OutsidePulse {
  readonly kind: 'pulse';
  /** Page time in ms. */
  readonly at: number;
  /** The section it falls in: its number, and whether it only counts in. */
  readonly section: { readonly index: number; readonly countsIn: boolean };
  /** Ticks from the beginning of the section, a multiple of `PULSE_TICKS`. */
  readonly ticks: number;
}

/** What the band does, as it is told to whoever plays along outside of the page: a little ahead, in order of time. */
export type OutsideEvent = OutsideNote | OutsidePulse;
