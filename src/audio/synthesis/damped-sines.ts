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

/** A sine as y[n] = c1 y[n-1] - c2 y[n-2], with its values before sample 0. */
interface Wave {
  /** Samples until it cannot be heard. */
  readonly length: number;
  readonly c1: number;
  readonly c2: number;
  readonly y1: number;
  readonly y2: number;
}

/** Sets out the recurrence of one sine; `null` when it can never be heard or lies above 0.47 of the rate. */
const recurrence = (sine: DampedSine, floor: number, room: number, sampleRate: number): Wave | null => {
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
    y1: (sine.amplitude * Math.sin(sine.phase - step)) / r,
    y2: (sine.amplitude * Math.sin(sine.phase - 2 * step)) / (r * r),
  };
};

const STILL: Wave = { length: 0, c1: 0, c2: 0, y1: 0, y2: 0 };

/**
 * Four at a time, as far as the first is heard, because each sample of a sine waits for the one before; two samples a
 * round, so that the older value of each gives way in its place.
 */
const addFour = (
  out: Float64Array,
  [a, b = STILL, c = STILL, d = STILL]: readonly [Wave, ...Wave[]],
): void => {
  const { c1: a1, c2: a2 } = a;
  const { c1: b1, c2: b2 } = b;
  const { c1, c2 } = c;
  const { c1: d1, c2: d2 } = d;
  let { y1: p1, y2: p2 } = a;
  let { y1: q1, y2: q2 } = b;
  let { y1: r1, y2: r2 } = c;
  let { y1: s1, y2: s2 } = d;
  const end = a.length & ~1;
  for (let i = 0; i < end; i += 2) {
    p2 = a1 * p1 - a2 * p2;
    q2 = b1 * q1 - b2 * q2;
    r2 = c1 * r1 - c2 * r2;
    s2 = d1 * s1 - d2 * s2;
    out[i] = (out[i] ?? 0) + (p2 + q2 + (r2 + s2));
    p1 = a1 * p2 - a2 * p1;
    q1 = b1 * q2 - b2 * q1;
    r1 = c1 * r2 - c2 * r1;
    s1 = d1 * s2 - d2 * s1;
    out[i + 1] = (out[i + 1] ?? 0) + (p1 + q1 + (r1 + s1));
  }
  if (end < a.length)
    out[end] =
      (out[end] ?? 0) + (a1 * p1 - a2 * p2 + (b1 * q1 - b2 * q2) + (c1 * r1 - c2 * r2 + (d1 * s1 - d2 * s2)));
};

/** Adds the sines to `out` from its first sample on, as far as each can be heard. */
export const addDampedSines = (out: Float64Array, sines: readonly DampedSine[], sampleRate: number): void => {
  const strongest = sines.reduce((most, sine) => Math.max(most, Math.abs(sine.amplitude)), 0);
  const waves = sines
    .map((sine) => recurrence(sine, strongest * INAUDIBLE, out.length, sampleRate))
    .filter((wave) => wave !== null)
    .sort((a, b) => b.length - a.length);
  for (let i = 0; i < waves.length; ) {
    const [longest, ...rest] = waves.slice(i, i + 4);
    if (longest === undefined) return;
    const near = rest.filter(({ length }) => length * 16 >= longest.length);
    addFour(out, [longest, ...near]);
    i += 1 + near.length;
  }
};
