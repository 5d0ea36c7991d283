import { createFilter, type FilterSpec } from '../signal/biquad';
import { createCurveReader, READING_MARGIN } from '../signal/curve-reader';
import { createLagProducts, type LagProducts } from '../signal/lag-products';
import { elementAt } from '../theory/element-at';
import { finePeak, type Peak } from './lag-peaks';

/** One band of the sound, compared with itself earlier. */
export interface SoundBand {
  /** Upper edge, Hz. */
  readonly to: number;
  /** Takes the next hop in; `afterNote` as lag products take it. Where it is silence the likeness stays as it was. */
  add(hop: Float64Array, afterNote: boolean, silent: boolean): void;
  /** Mean square of the latest hop in this band. */
  power(): number;
  /** Likeness of a short window at each pitch, about −1 to 1, less where the sound is as like itself at half the period. */
  readonly likeness: Float64Array;
  /** The peak near a period in the last `hops` hops; its lag is in samples at the rate of the hops. */
  peak(hops: number, lag: number): Peak | undefined;
}

export interface SoundBandOptions {
  /** Edges in Hz; absent where the band is open. */
  readonly from?: number;
  readonly to?: number;
  /** Only every so-manieth sample is kept, as the band needs no more. */
  readonly keep: number;
  /** Rate of the hops, Hz. */
  readonly rate: number;
  /** Samples in a hop. */
  readonly hop: number;
  /** Periods of the pitches, in samples at that rate, the longest first. */
  readonly lags: Float64Array;
  /** Hops of the longest window. */
  readonly longest: number;
}

/** A short window holds so many periods, and is at most so many hops long. */
const PERIODS = 2;
const MOST_HOPS = 3;
/** Hops are counted generously: a window that lacks so much of one is not made longer. */
const LACKING = 0.25;

/** Pitches, next to each other, that are judged by windows of one length. */
interface Stretch {
  readonly hops: number;
  readonly lags: Float64Array;
  readonly from: number;
}

const hopsOf = (lag: number, hop: number): number =>
  Math.max(1, Math.min(MOST_HOPS, Math.ceil((PERIODS * lag) / hop - LACKING)));

/** Lags of one window each, the longest first. */
const stretchesOf = (lags: Float64Array, hop: number): readonly Stretch[] => {
  const stretches: Stretch[] = [];
  for (let from = 0; from < lags.length; ) {
    const hops = hopsOf(elementAt(lags, from), hop);
    const next = lags.findIndex((lag, i) => i > from && hopsOf(lag, hop) !== hops);
    const to = next < 0 ? lags.length : next;
    stretches.push({ hops, lags: lags.subarray(from, to), from });
    from = to;
  }
  return stretches;
};

/**
 * What is as like itself after half a period has another one: how much of that counts, beyond a little; and how much
 * more than half the period a whole one must leave unexplained to count for nothing.
 */
const SHOULDER = { counts: 2, beyond: 0.02, times: 2, least: 0.01 } as const;

/** The likeness of a pitch, by that at half its period. */
const withoutShoulder = (like: number, half: number): number => {
  if (half <= like) return like;
  if (1 - like * Math.abs(like) > SHOULDER.times * (1 - half * Math.abs(half)) + SHOULDER.least) return 0;
  return Math.max(0, like - SHOULDER.counts * Math.max(0, half - like - SHOULDER.beyond));
};

/** Takes from the likeness of the highest pitches what comes from sound so low that it hardly changes in their period. */
const createShoulderCheck = (lags: Float64Array, longestLag: number) => {
  const highest = elementAt(lags, lags.length - 1);
  const from = lags.findIndex((lag) => lag < 2 * highest);
  const halves = createCurveReader(lags.subarray(from).map((lag) => lag / 2));
  const half = new Float64Array(lags.length - from);
  return {
    first: 0,
    last: Math.min(longestLag, Math.ceil(2 * highest) + READING_MARGIN),
    check(curve: Float64Array, likeness: Float64Array): void {
      halves.read(curve, half);
      for (let i = 0; i < half.length; i += 1) {
        likeness[from + i] = withoutShoulder(likeness[from + i] ?? 0, half[i] ?? 0);
      }
    },
  };
};

/** Fills the likeness of every pitch from the products of its own window. */
const createLikeness = (lags: Float64Array, hop: number, longestLag: number) => {
  const curve = new Float64Array(longestLag + 1);
  const shoulders = createShoulderCheck(lags, longestLag);
  const stretches = stretchesOf(lags, hop).map((stretch) => ({
    ...stretch,
    reader: createCurveReader(stretch.lags),
    first: Math.max(0, Math.floor(elementAt(stretch.lags, stretch.lags.length - 1)) - READING_MARGIN),
    last: Math.min(longestLag, Math.ceil(elementAt(stretch.lags, 0)) + READING_MARGIN),
  }));
  return (products: LagProducts, likeness: Float64Array): void => {
    for (const { hops, from, reader, first, last } of stretches) {
      products.compare(hops, curve, first, last);
      reader.read(curve, likeness, from);
    }
    products.compare(1, curve, shoulders.first, shoulders.last);
    shoulders.check(curve, likeness);
  };
};

/** A band with a filter and running products of its own, for one stream; every `keep`-th sample is enough for it. */
export const createSoundBand = (options: SoundBandOptions): SoundBand => {
  const { from, to, keep, rate, hop, lags, longest } = options;
  const edges: FilterSpec[] = [];
  if (from !== undefined) edges.push({ kind: 'high-pass', cutoff: from });
  if (to !== undefined) edges.push({ kind: 'low-pass', cutoff: to });
  const filter = createFilter(edges, rate);
  const longestLag = Math.ceil((lags[0] ?? 0) / keep) + READING_MARGIN;
  const products = createLagProducts({ hop: hop / keep, longestLag, longestWindow: longest });
  const compare = createLikeness(
    lags.map((lag) => lag / keep),
    hop / keep,
    longestLag,
  );
  const block = new Float64Array(hop);
  const kept = new Float64Array(hop / keep);
  const curve = new Float64Array(longestLag + 1);
  const likeness = new Float64Array(lags.length);
  let power = 0;
  return {
    to: to ?? Number.POSITIVE_INFINITY,
    likeness,
    add(samples, afterNote, silent) {
      block.set(samples);
      filter(block);
      let sum = 0;
      for (let i = 0; i < kept.length; i += 1) {
        const sample = block[(i + 1) * keep - 1] ?? 0;
        kept[i] = sample;
        sum += sample * sample;
      }
      power = sum / kept.length;
      products.add(kept, afterNote);
      if (!silent) compare(products, likeness);
    },
    power: () => power,
    peak(hops, lag) {
      products.compare(hops, curve);
      const peak = finePeak(curve, lag / keep);
      return peak && { lag: peak.lag * keep, height: peak.height };
    },
  };
};
