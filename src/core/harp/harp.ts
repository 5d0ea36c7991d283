import type { Cents, Midi, PitchClass } from '../theory/units';

/** Which way the air goes through the reed. */
export const BREATHS = ['blow', 'draw'] as const;
export type Breath = (typeof BREATHS)[number];
/** How a reed is made to sound: as it is tuned, bent down, or overblown and overdrawn. */
export const TECHNIQUES = ['natural', 'bend', 'overbend'] as const;
export type Technique = (typeof TECHNIQUES)[number];

/** One reed of a harp. `cents` is its tuning away from equal temperament. */
export interface Reed {
  readonly hole: number;
  readonly breath: Breath;
  readonly pitch: Midi;
  readonly cents: Cents;
}

/** Something the player can sound: a natural note, a bend of whole semitones, or an overbend. */
export interface Sound {
  readonly hole: number;
  readonly breath: Breath;
  readonly technique: Technique;
  /** Semitones below the natural note; 0 unless `technique` is `bend`. */
  readonly bend: number;
  readonly pitch: Midi;
  /** Expected deviation from equal temperament. */
  readonly cents: Cents;
}

/** A tuning: two rows of reeds as semitones above the key note of the label. Reed tables are stored, not names. */
export interface Tuning {
  readonly id: string;
  readonly name: string;
  readonly blow: readonly number[];
  readonly draw: readonly number[];
}

/** A harp in a key: its reeds and everything they can be made to sound. */
export interface Harp {
  readonly tuning: Tuning;
  readonly key: PitchClass;
  /** Octaves away from the key's usual range: 0, −1 for low, −2 for double low, +1 for high. */
  readonly octave: number;
  readonly reeds: readonly Reed[];
  /** Every natural note, bend and overbend, lowest first. */
  readonly sounds: readonly Sound[];
}
