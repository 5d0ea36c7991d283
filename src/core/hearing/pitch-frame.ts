import type { Seconds } from '../theory/units';

/** What the ear knows about the pitch at one moment. */
export interface PitchFrame {
  /** Time of the last sample used, from the start of the stream. */
  readonly known: Seconds;
  /** The time the pitch belongs to; never falls, and stands nearly still while a change waits to be confirmed. */
  readonly centre: Seconds;
  /** Hz; 0 when unvoiced. */
  readonly frequency: number;
  /** How periodic the sound is, 0 to 1. */
  readonly clarity: number;
  /** Level in dB re full scale (a full-scale sine is −3 dB), without what lies below the harp. */
  readonly level: number;
}
