import type { Glide, ModeRow } from './drum-modes';

/**
 * An octave of noise: the stroke, and what rings on after it. Levels are RMS at the start in dB, on the same scale
 * as the modes' amplitudes.
 */
export type NoiseRow = readonly [hz: number, strike: number, ring: number, ringT60Milliseconds: number];

/** Partials of a plate, spread over the octaves of the noise table and as loud and long as it says. */
export interface Cluster {
  /** The instrument, not the stroke: the same metal has the same partials at every hit. */
  readonly seed: number;
  readonly from: number;
  readonly to: number;
  readonly count: number;
  /** Share of the ring's energy that the partials carry; the noise carries the rest. */
  readonly share: number;
}

/** A drum sound at velocity 70. Times in ms, frequencies in Hz. */
export interface DrumRecipe {
  /** LU re the electric piano's C4 at velocity 80. */
  readonly loudness: number;
  /** LU above the square law at velocity 110. */
  readonly accent?: number;
  /** Length of the sound in seconds. */
  readonly seconds: number;
  /** Half a cosine from silence to full, of the modes. */
  readonly rise: number;
  readonly modes: readonly ModeRow[];
  readonly glide?: Glide;
  readonly strikeT60: number;
  readonly noise: readonly NoiseRow[];
  /** The same for the noise, which may come before the body (a beater) or answer it (snare wires); else as `rise`. */
  readonly noiseRise?: number;
  readonly cluster?: Cluster;
  /** A second, later decay on top. */
  readonly damp?: { readonly after: number; readonly t60: number };
  /** Low-pass over the whole sound, 24 dB an octave; its corner moves up by `opens` octaves at velocity 110. */
  readonly lowPass?: { readonly hz: number; readonly opens: number };
  /** dB per octave above 1 kHz gained at velocity 110 (and lost at 30). */
  readonly open: number;
  /** Share by which velocity 110 rings longer. */
  readonly ring?: number;
}
