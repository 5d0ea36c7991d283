/**
 * Sums of exponentially damped sine waves. Each sine is the two-term recurrence
 * y[n] = 2 r cos(w) y[n-1] - r² y[n-2], exact for a decaying sine, so that no sine function runs per sample.
 */

/** A sine wave that starts at sample 0 and dies away exponentially. */
export interface DampedSine {
  /** Hz. */
  readonly frequency: number;
  readonly amplitude: number;
  /** Radians at sample 0. */
  readonly phase: number;
  /** dB per second, 0 or more. */
  readonly decay: number;
}

/** A sine is left out, or ends, when it is this far below the strongest sine of its sum. */
const INAUDIBLE = 10 ** (-84 / 20);

interface Recurrence {
  readonly length: number;
  readonly c1: number;
  readonly c2: number;
  readonly before: number;
  readonly beforeThat: number;
}

/** Sets out the recurrence of one sine; `null` when it can never be heard or lies above 0.47 of the rate. */
const recurrence = (sine: DampedSine, floor: number, room: number, sampleRate: number): Recurrence | null => {
  const size = Math.abs(sine.amplitude);
  if (size <= floor || sine.frequency > 0.47 * sampleRate) return null;
  const fall = (sine.decay * Math.LN10) / (20 * sampleRate);
  const length = fall > 0 ? Math.min(room, Math.ceil(Math.log(size / floor) / fall)) : room;
  const step = (2 * Math.PI * sine.frequency) / sampleRate;
  const r = Math.exp(-fall);
  return {
    length,
    c1: 2 * r * Math.cos(step),
    c2: r * r,
    before: (sine.amplitude * Math.sin(sine.phase - step)) / r,
    beforeThat: (sine.amplitude * Math.sin(sine.phase - 2 * step)) / (r * r),
  };
};

/** Adds a sine from a sample on, as its recurrence stands there. */
const addOne = (out: Float64Array, from: number, { length, c1, c2, ...state }: Recurrence): void => {
  let { before: y1, beforeThat: y2 } = state;
  for (let i = from; i < length; i++) {
    const y = c1 * y1 - c2 * y2;
    out[i] = (out[i] ?? 0) + y;
    y2 = y1;
    y1 = y;
  }
};

/** Two at a time: the second recurrence fills the waiting time of the first. */
const addPair = (out: Float64Array, long: Recurrence, short: Recurrence): void => {
  const { c1: a1, c2: a2 } = long;
  const { c1: b1, c2: b2 } = short;
  let { before: p1, beforeThat: p2 } = long;
  let { before: q1, beforeThat: q2 } = short;
  const both = short.length;
  for (let i = 0; i < both; i++) {
    const p = a1 * p1 - a2 * p2;
    const q = b1 * q1 - b2 * q2;
    out[i] = (out[i] ?? 0) + p + q;
    p2 = p1;
    p1 = p;
    q2 = q1;
    q1 = q;
  }
  addOne(out, both, { ...long, before: p1, beforeThat: p2 });
};

/** Adds the sines to `out` from its first sample on, as far as each can be heard. */
export const addDampedSines = (out: Float64Array, sines: readonly DampedSine[], sampleRate: number): void => {
  const strongest = sines.reduce((most, sine) => Math.max(most, Math.abs(sine.amplitude)), 0);
  const waves = sines
    .map((sine) => recurrence(sine, strongest * INAUDIBLE, out.length, sampleRate))
    .filter((wave) => wave !== null)
    .sort((a, b) => b.length - a.length);
  for (let i = 0; i < waves.length; i += 2) {
    const long = waves[i];
    const short = waves[i + 1];
    if (long !== undefined && short !== undefined) addPair(out, long, short);
    else if (long !== undefined) addOne(out, 0, long);
  }
};
