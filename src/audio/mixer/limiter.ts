/**
 * A true-peak limiter that looks ahead. The level between samples is estimated at four times the sample rate, as
 * ITU-R BS.1770-4 Annex 2 does; the gain it asks for is held over the look-ahead, recovers slowly, and is smoothed
 * by an average of the same length, so that the full reduction is reached exactly when the peak leaves the delay.
 */
export interface LimiterOptions {
  readonly sampleRate: number;
  /** Highest level between samples, in dB re full scale. */
  readonly ceiling: number;
}

/** Keeps two channels under full scale by looking ahead. */
export interface Limiter {
  /** Limits both channels in place; what comes out is `delay` frames old. */
  process(left: Float32Array, right: Float32Array): void;
  /** Frames between input and output. */
  readonly delay: number;
}

/** 1.5 ms: shorter than a drum's attack is heard, longer than a half period at 400 Hz. */
const LOOK_AHEAD = 0.0015;
/** Recovery time constant; shorter ones bend the wave of a bass note. */
const RELEASE = 0.08;
const PHASES = 4;
/** Filter length per phase, in samples: twice the twelve of the annex, which reads cymbals too low. */
const TAPS = 24;

/** Polyphase windowed-sinc interpolator (Hann), one row for each quarter sample between two samples. */
const interpolator = (): readonly Float64Array[] =>
  Array.from({ length: PHASES - 1 }, (_, phase) => {
    const shift = (phase + 1) / PHASES;
    const row = Float64Array.from({ length: TAPS }, (_, tap) => {
      const x = tap - (TAPS / 2 - 1) - shift;
      const window = 0.5 + 0.5 * Math.cos((2 * Math.PI * x) / TAPS);
      return (Math.sin(Math.PI * x) / (Math.PI * x)) * window;
    });
    const sum = row.reduce((total, value) => total + value, 0);
    return row.map((value) => value / sum);
  });

const FILTER = interpolator();
/** The windowed filter's largest possible overshoot: below ceiling divided by this no estimate is needed. */
const GREATEST = Math.max(...FILTER.map((row) => row.reduce((total, value) => total + Math.abs(value), 0)));

/** Frames a limiter at this sample rate holds back. */
export const limiterDelay = (sampleRate: number): number => Math.round(LOOK_AHEAD * sampleRate) + TAPS / 2;

/** Creates a stereo limiter; both channels get the same gain, so that the image stays. */
export const createLimiter = ({ sampleRate, ceiling }: LimiterOptions): Limiter => {
  const span = Math.round(LOOK_AHEAD * sampleRate);
  const delay = limiterDelay(sampleRate);
  const limit = 10 ** (ceiling / 20);
  const size = 2 ** Math.ceil(Math.log2(delay + TAPS + 1));
  const mask = size - 1;
  const history = [new Float64Array(size), new Float64Array(size)] as const;
  const recovery = 1 - Math.exp(-1 / (RELEASE * sampleRate));
  const smallest = slidingMinimum(span + 1);
  const average = movingAverage(span);
  let frame = 0;
  let held = 1;

  const peakOf = (line: Float64Array): number => {
    let peak = Math.abs(line[(frame - TAPS / 2) & mask] ?? 0);
    for (const row of FILTER) {
      let sum = 0;
      for (let tap = 0; tap < TAPS; tap += 1)
        sum += (row[tap] ?? 0) * (line[(frame - (TAPS - 1) + tap) & mask] ?? 0);
      peak = Math.max(peak, Math.abs(sum));
    }
    return peak;
  };

  let quietFor = 0;
  const gainAsked = (left: number, right: number): number => {
    const loud = Math.abs(left) * GREATEST >= limit || Math.abs(right) * GREATEST >= limit;
    quietFor = loud ? 0 : quietFor + 1;
    if (quietFor > TAPS) return 1;
    const peak = Math.max(peakOf(history[0]), peakOf(history[1]));
    return peak > limit ? limit / peak : 1;
  };

  return {
    delay,
    process: (left, right) => {
      for (let index = 0; index < left.length; index += 1) {
        history[0][frame & mask] = left[index] ?? 0;
        history[1][frame & mask] = right[index] ?? 0;
        const needed = smallest(gainAsked(left[index] ?? 0, right[index] ?? 0));
        held = Math.min(needed, held + (1 - held) * recovery);
        const gain = average(held);
        left[index] = (history[0][(frame - delay) & mask] ?? 0) * gain;
        right[index] = (history[1][(frame - delay) & mask] ?? 0) * gain;
        frame = (frame + 1) | 0;
      }
    },
  };
};

/** Smallest of the last `length` values, in constant time per value on average. */
const slidingMinimum = (length: number): ((value: number) => number) => {
  const values = new Float64Array(length + 1);
  const frames = new Float64Array(length + 1);
  let first = 0;
  let count = 0;
  let frame = 0;
  return (value) => {
    while (count > 0 && (values[(first + count - 1) % (length + 1)] ?? 0) >= value) count -= 1;
    const slot = (first + count) % (length + 1);
    values[slot] = value;
    frames[slot] = frame;
    count += 1;
    if ((frames[first] ?? 0) <= frame - length) {
      first = (first + 1) % (length + 1);
      count -= 1;
    }
    frame += 1;
    return values[first] ?? 0;
  };
};

/** Mean of the last `length` values, starting as if all before had been 1. */
const movingAverage = (length: number): ((value: number) => number) => {
  const values = new Float64Array(length).fill(1);
  let sum = length;
  let slot = 0;
  return (value) => {
    sum += value - (values[slot] ?? 0);
    values[slot] = value;
    slot = (slot + 1) % length;
    if (slot === 0) sum = values.reduce((total, each) => total + each, 0);
    return sum / length;
  };
};
