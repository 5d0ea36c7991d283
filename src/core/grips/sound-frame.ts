/** What is known of the pitch at one moment, as much of it as grips need. */
export interface SoundFrame {
  /** Seconds of the last sample used, and that the pitch belongs to. */
  readonly known: number;
  readonly centre: number;
  /** Hz; 0 when unvoiced. */
  readonly frequency: number;
  /** How periodic the sound is, 0 to 1. */
  readonly clarity: number;
  /** dB re full scale. */
  readonly level: number;
}
