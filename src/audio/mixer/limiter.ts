/**
 * A true-peak limiter that looks ahead. The level between samples is estimated at four times the sample rate, as
 * ITU-R BS.1770-4 Annex 2 does; the gain it asks for is held over the look-ahead, recovers slowly, and is smoothed
 * by an average of the same length, so that the full reduction is reached exactly when the peak leaves the delay.
 */
import { elementAt } from '../../core/theory/element-at';

/** What a limiter is made for. */
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
/** A gain this near to 1 is 1 (−120 dB off), so that what is not limited is passed on as it is. */
const RESTED = 1 - 1e-6;
/** Samples looked over at once for whether there is anything to do; the quantum of an audio thread. */
const AT_ONCE = 128;
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
const QUARTER = elementAt(FILTER, 0);
const HALF = elementAt(FILTER, 1);
const THREE_QUARTERS = elementAt(FILTER, 2);
/** The windowed filter's largest possible overshoot: below ceiling divided by this no estimate is needed. */
const GREATEST = Math.max(...FILTER.map((row) => row.reduce((total, value) => total + Math.abs(value), 0)));

/** Frames a limiter at this sample rate holds back. */
export const limiterDelay = (sampleRate: number): number => Math.round(LOOK_AHEAD * sampleRate) + TAPS / 2;

/** Samples gone by, each written twice so that any stretch of them can be read without turning round. */
interface History {
  readonly samples: Float64Array;
  readonly size: number;
  /** Samples since one that might come near the ceiling. */
  quietFor: number;
}

const historyOf = (size: number): History => ({
  samples: new Float64Array(2 * size),
  size,
  quietFor: TAPS,
});

/** Level of the sample `TAPS / 2` back from the newest, and of what lies between it and the next, at so many frames. */
const peakAt = ({ samples, size }: History, newest: number): number => {
  const first = newest + size - (TAPS - 1);
  let [quarter, half, threeQuarters] = [0, 0, 0];
  for (let tap = 0; tap < TAPS; tap += 1) {
    const sample = samples[first + tap] ?? 0;
    quarter += (QUARTER[tap] ?? 0) * sample;
    half += (HALF[tap] ?? 0) * sample;
    threeQuarters += (THREE_QUARTERS[tap] ?? 0) * sample;
  }
  const between = Math.max(Math.abs(quarter), Math.abs(half), Math.abs(threeQuarters));
  return Math.max(between, Math.abs(samples[newest + size - TAPS / 2] ?? 0));
};

/** Creates a stereo limiter; both channels get the same gain, so that the image stays. */
export const createLimiter = (options: LimiterOptions): Limiter => new LookAheadLimiter(options);

/** A class with its state in fields, since this runs for every sample on the audio thread. */
class LookAheadLimiter implements Limiter {
  readonly delay: number;
  private readonly limit: number;
  private readonly recovery: number;
  private readonly left: History;
  private readonly right: History;
  private readonly smallest: SlidingMinimum;
  private readonly average: MovingAverage;
  private newest = 0;
  private held = 1;

  constructor({ sampleRate, ceiling }: LimiterOptions) {
    const span = Math.round(LOOK_AHEAD * sampleRate);
    this.delay = limiterDelay(sampleRate);
    this.limit = 10 ** (ceiling / 20);
    this.recovery = 1 - Math.exp(-1 / (RELEASE * sampleRate));
    this.left = historyOf(this.delay + TAPS + 1);
    this.right = historyOf(this.delay + TAPS + 1);
    this.smallest = new SlidingMinimum(span + 1);
    this.average = new MovingAverage(span);
  }

  process(left: Float32Array, right: Float32Array): void {
    for (let from = 0; from < left.length; from += AT_ONCE) {
      const to = Math.min(left.length, from + AT_ONCE);
      if (this.isAtRest() && this.isQuiet(left, from, to) && this.isQuiet(right, from, to))
        this.pass(left, right, from, to);
      else this.restrain(left, right, from, to);
    }
  }

  /** Nothing near asks for less, and nothing has to recover. */
  private isAtRest(): boolean {
    const { left, right, smallest, average } = this;
    const nothingNear = left.quietFor > TAPS && right.quietFor > TAPS;
    return nothingNear && this.held === 1 && smallest.isAtRest() && average.isAtRest();
  }

  private isQuiet(samples: Float32Array, from: number, to: number): boolean {
    let peak = 0;
    for (let i = from; i < to; i += 1) peak = Math.max(peak, Math.abs(samples[i] ?? 0));
    return peak * GREATEST < this.limit;
  }

  /** Holds back, and does nothing else. */
  private pass(left: Float32Array, right: Float32Array, from: number, to: number): void {
    const { samples: lefts, size } = this.left;
    const { samples: rights } = this.right;
    const { delay } = this;
    let { newest } = this;
    for (let index = from; index < to; index += 1) {
      newest = newest + 1 === size ? 0 : newest + 1;
      const other = newest + size;
      lefts[newest] = lefts[other] = left[index] ?? 0;
      rights[newest] = rights[other] = right[index] ?? 0;
      left[index] = lefts[other - delay] ?? 0;
      right[index] = rights[other - delay] ?? 0;
    }
    this.newest = newest;
    this.left.quietFor += to - from;
    this.right.quietFor += to - from;
    this.smallest.pass(to - from);
  }

  private restrain(left: Float32Array, right: Float32Array, from: number, to: number): void {
    const { samples: lefts, size } = this.left;
    const { samples: rights } = this.right;
    const { delay, recovery } = this;
    let { newest, held } = this;
    for (let index = from; index < to; index += 1) {
      newest = newest + 1 === size ? 0 : newest + 1;
      const one = left[index] ?? 0;
      const other = right[index] ?? 0;
      lefts[newest] = one;
      lefts[newest + size] = one;
      rights[newest] = other;
      rights[newest + size] = other;
      const needed = this.smallest.of(this.gainAsked(one, other, newest));
      held += (1 - held) * recovery;
      if (held > RESTED) held = 1;
      if (needed < held) held = needed;
      const gain = this.average.of(held);
      left[index] = (lefts[newest + size - delay] ?? 0) * gain;
      right[index] = (rights[newest + size - delay] ?? 0) * gain;
    }
    this.newest = newest;
    this.held = held;
  }

  /** The gain that what lies `TAPS / 2` back asks for. */
  private gainAsked(left: number, right: number, newest: number): number {
    const peak = Math.max(this.peakOf(this.left, left, newest), this.peakOf(this.right, right, newest));
    return peak > this.limit ? this.limit / peak : 1;
  }

  /** 0 where nothing near can reach the ceiling. */
  private peakOf(history: History, sample: number, newest: number): number {
    history.quietFor = Math.abs(sample) * GREATEST >= this.limit ? 0 : history.quietFor + 1;
    return history.quietFor > TAPS ? 0 : peakAt(history, newest);
  }
}

/** Smallest of the last `length` values, none above 1 and all before the first 1, in constant time on average. */
class SlidingMinimum {
  private readonly length: number;
  private readonly values: Float64Array;
  /** When each of the values has gone by. */
  private readonly over: Float64Array;
  private first = 0;
  private count = 0;
  private frame = 0;

  constructor(length: number) {
    this.length = length;
    this.values = new Float64Array(length + 1);
    this.over = new Float64Array(length + 1);
  }

  isAtRest(): boolean {
    return this.count === 0;
  }

  /** So many values of 1 have gone by, at rest. */
  pass(count: number): void {
    this.frame += count;
  }

  of(value: number): number {
    this.frame += 1;
    if (this.count === 0 && value === 1) return 1;
    const { values, over, length } = this;
    const size = length + 1;
    while (this.count > 0 && (values[(this.first + this.count - 1) % size] ?? 0) >= value) this.count -= 1;
    if (value < 1) {
      const slot = (this.first + this.count) % size;
      values[slot] = value;
      over[slot] = this.frame + length;
      this.count += 1;
    }
    if (this.count > 0 && (over[this.first] ?? 0) <= this.frame) {
      this.first = (this.first + 1) % size;
      this.count -= 1;
    }
    return this.count === 0 ? 1 : (values[this.first] ?? 1);
  }
}

/** Mean of the last `length` values, starting as if all before had been 1. */
class MovingAverage {
  private readonly values: Float64Array;
  private sum: number;
  private slot = 0;
  private ones: number;

  constructor(length: number) {
    this.values = new Float64Array(length).fill(1);
    this.sum = length;
    this.ones = length;
  }

  isAtRest(): boolean {
    return this.ones >= this.values.length;
  }

  of(value: number): number {
    const { values } = this;
    const { length } = values;
    if (value === 1 && this.ones >= length) return 1;
    this.ones = value === 1 ? this.ones + 1 : 0;
    this.sum += value - (values[this.slot] ?? 0);
    values[this.slot] = value;
    this.slot = this.slot + 1 === length ? 0 : this.slot + 1;
    // Rounding would add up over hours.
    if (this.slot === 0) this.sum = values.reduce((total, each) => total + each, 0);
    return this.sum / length;
  }
}
