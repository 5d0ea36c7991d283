import { asSeconds } from '../theory/units';
import { createFrontEnd } from './front-end';
import { allowedPeaks, createLagTest, firstHighPeak, type Peak, peakNear } from './lag-peaks';
import { createLagProducts } from './lag-products';
import type { PitchFrame } from './pitch-frame';
import { ANY_HARP, type PitchRange } from './reachable';

export interface PitchTrackerOptions {
  /** Hz, 16000 or more; made for 44100 and 48000. */
  readonly sampleRate: number;
  /** What can sound, lowest first; absent means any harp. */
  readonly ranges?: readonly PitchRange[];
  /** Level in dB re full scale below which nothing counts as the harp: room noise and leak, as calibrated. */
  readonly gate?: number;
}

/** Samples in, frames out, one a hop; a frame uses nothing that comes later. */
export interface PitchTracker {
  /** Any number of samples; the same samples cut otherwise give the same frames. */
  push(samples: Float32Array): readonly PitchFrame[];
}

/** Samples in a hop at the working rate. */
const HOP = 64;
/** Shortest and longest window, seconds. */
const WINDOW = { shortest: 0.0105, longest: 0.0505 } as const;
/** A first peak this high beside the highest is the period. */
const FIRST_PEAK = 0.85;
/** Likeness that makes a sound voiced, and that keeps it so. */
const VOICED = { start: 0.75, stay: 0.5 } as const;
/** Likeness below which the window does not grow. */
const GROW = 0.8;
/** Level of silence, dB. */
const SILENT = -120;
const DEFAULT_GATE = -65;

const decibels = (power: number): number => Math.max(SILENT, 10 * Math.log10(power + 1e-12));

const near = (a: number, b: number): boolean => Math.abs(Math.log2(a / b)) < 0.6 / 12;

/** A pitch tracker for one stream. Throws RangeError when no range is given or the rate is too low. */
export const createPitchTracker = ({
  sampleRate,
  ranges = ANY_HARP,
  gate = DEFAULT_GATE,
}: PitchTrackerOptions): PitchTracker => {
  const lowest = Math.min(...ranges.map(({ from }) => from));
  const highest = Math.max(...ranges.map(({ to }) => to));
  if (!(lowest > 0 && sampleRate >= 16000))
    throw new RangeError('A tracker needs a range and 16 kHz or more');
  const front = createFrontEnd({ sampleRate, hop: HOP, lowest: 0.85 * lowest });
  const longestLag = Math.ceil(front.rate / lowest) + 2;
  const shortestLag = Math.max(2, Math.floor(front.rate / highest) - 1);
  const hops = (seconds: number): number => Math.max(1, Math.round((seconds * front.rate) / HOP));
  const shortWindow = hops(Math.max(WINDOW.shortest, 1.2 / lowest));
  const longWindow = hops(Math.max(WINDOW.longest, 3 / lowest));
  const products = createLagProducts({ hop: HOP, longestLag, longestWindow: longWindow });
  const allowed = createLagTest(ranges, front.rate);
  const short = new Float64Array(longestLag + 1);
  const long = new Float64Array(longestLag + 1);

  let hopCount = 0;
  let lag = 0;
  let window = shortWindow;
  let waiting = 0;
  let lastCentre = 0;
  let lastFrequency = 0;
  let lastClarity = 0;

  const refine = (curve: Float64Array, peak: Peak): Peak => {
    let best = peak;
    let fine = peak.lag;
    for (let m = 2; m * fine < longestLag - 1; m += 1) {
      const next = peakNear(curve, m * fine, Math.max(1, 0.25 * peak.lag));
      if (next === undefined || next.height < 0.9 * peak.height) break;
      best = next;
      fine = next.lag / m;
    }
    return { lag: fine, height: Math.max(peak.height, best.height) };
  };

  const frame = (frequency: number, clarity: number, centre: number, level: number): PitchFrame => {
    lastCentre = Math.max(lastCentre, centre);
    lastFrequency = frequency;
    lastClarity = clarity;
    return {
      known: asSeconds((hopCount * front.rawHop) / sampleRate),
      centre: asSeconds(lastCentre),
      frequency,
      clarity: Math.max(0, Math.min(1, clarity)),
      level,
    };
  };

  const report = (curve: Float64Array, peak: Peak, level: number): PitchFrame => {
    const { lag: fine, height } = refine(curve, peak);
    const known = (hopCount * HOP) / front.rate;
    return frame(front.rate / fine, height, known - (window * HOP + fine) / front.rate / 2, level);
  };

  const hold = (level: number): PitchFrame => frame(lastFrequency, lastClarity, lastCentre + 1e-4, level);

  const silence = (clarity: number, level: number): PitchFrame => {
    lag = 0;
    waiting = 0;
    window = shortWindow;
    return frame(0, clarity, (hopCount * HOP - (shortWindow * HOP) / 2) / front.rate, level);
  };

  const start = (peak: Peak, level: number): PitchFrame => {
    if (waiting > 0 && near(peak.lag, waiting)) {
      lag = peak.lag;
      waiting = 0;
      window = shortWindow;
      return report(short, peak, level);
    }
    waiting = peak.lag;
    return hold(level);
  };

  const goOn = (here: Peak, level: number): PitchFrame => {
    waiting = 0;
    const grown = Math.min(longWindow, window + 1);
    products.compare(grown, long);
    const longPeak = peakNear(long, here.lag, Math.max(1, 0.06 * here.lag));
    if (longPeak !== undefined && longPeak.height >= Math.min(GROW, here.height - 0.02)) {
      window = grown;
      lag = longPeak.lag;
      return report(long, longPeak, level);
    }
    window = shortWindow;
    lag = here.lag;
    return report(short, here, level);
  };

  const step = (hop: Float64Array): PitchFrame => {
    hopCount += 1;
    products.add(hop);
    const level = decibels(products.compare(shortWindow, short));
    const peaks = allowedPeaks(short, allowed, shortestLag);
    const best = firstHighPeak(peaks, FIRST_PEAK);
    if (best === undefined || level < gate || best.height < (lag > 0 ? VOICED.stay : VOICED.start)) {
      return silence(best?.height ?? 0, level);
    }
    if (lag === 0) return start(best, level);
    const here = peakNear(short, lag, Math.max(1, 0.06 * lag));
    if (here !== undefined && here.height >= 0.9 * best.height) return goOn(here, level);
    return start(best, level);
  };

  return {
    push(samples) {
      const frames: PitchFrame[] = [];
      front.push(samples, (hop) => frames.push(step(hop)));
      return frames;
    },
  };
};
