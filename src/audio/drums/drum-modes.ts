import type { DampedSine } from '../synthesis/damped-sines';

/** A mode (ringing resonance) of a struck body as a table row; levels in dB among the rows of a sound. */
export type ModeRow = readonly [hz: number, level: number, t60Milliseconds: number, phase?: number];

/** A mode whose pitch settles after the stroke, as that of a slack head does. */
export interface Glide {
  readonly mode: ModeRow;
  /** Start frequency over final frequency. */
  readonly ratio: number;
  /** Time constant of the settling in ms. */
  readonly settle: number;
}

/** Decay in dB per second of a T60 in ms. */
export const decayOf = (t60Milliseconds: number): number => 60000 / t60Milliseconds;

/** A sine of −100 dB is no longer computed. */
const SILENT_DECIBELS = 100;

/** Adds a damped sine to `out` whose frequency starts at `ratio` times its own and settles (time constant in ms). */
export const addGlidingSine = (
  out: Float64Array,
  sampleRate: number,
  sine: DampedSine,
  { ratio, settle }: Pick<Glide, 'ratio' | 'settle'>,
): void => {
  const end = Math.min(out.length, Math.ceil((sampleRate * SILENT_DECIBELS) / sine.decay));
  const fall = 10 ** (-sine.decay / (20 * sampleRate));
  const settling = Math.exp(-1000 / (settle * sampleRate));
  const step = (2 * Math.PI * sine.frequency) / sampleRate;
  let amplitude = sine.amplitude;
  let excess = ratio - 1;
  let phase = sine.phase;
  for (let i = 0; i < end; i += 1) {
    out[i] = (out[i] ?? 0) + amplitude * Math.sin(phase);
    phase += step * (1 + excess);
    amplitude *= fall;
    excess *= settling;
  }
};
