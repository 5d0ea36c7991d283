import { createFilter, type FilterSpec } from '../signal/biquad';
import { createCurveReader, READING_MARGIN } from '../signal/curve-reader';
import { createLagProducts } from '../signal/lag-products';
import { finePeak, type Peak } from './lag-peaks';

/** One band of the sound, compared with itself earlier. */
export interface SoundBand {
  /** Upper edge, Hz. */
  readonly to: number;
  /** Takes the next hop in. */
  add(hop: Float64Array): void;
  /** Likeness of the shortest window at each pitch, about −1 to 1. */
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
  /** Hops. */
  readonly window: { readonly shortest: number; readonly longest: number };
}

/** A band with a filter and running products of its own, for one stream; every `keep`-th sample is enough for it. */
export const createSoundBand = (options: SoundBandOptions): SoundBand => {
  const { from, to, keep, rate, hop, lags, window } = options;
  const edges: FilterSpec[] = [];
  if (from !== undefined) edges.push({ kind: 'high-pass', cutoff: from, order: 4 });
  if (to !== undefined) edges.push({ kind: 'low-pass', cutoff: to, order: 4 });
  const filter = createFilter(edges, rate);
  const longestLag = Math.ceil((lags[0] ?? 0) / keep) + READING_MARGIN;
  const products = createLagProducts({ hop: hop / keep, longestLag, longestWindow: window.longest });
  const reader = createCurveReader(lags.map((lag) => lag / keep));
  const block = new Float64Array(hop);
  const kept = new Float64Array(hop / keep);
  const curve = new Float64Array(longestLag + 1);
  const likeness = new Float64Array(lags.length);
  return {
    to: to ?? Number.POSITIVE_INFINITY,
    likeness,
    add(samples) {
      block.set(samples);
      filter(block);
      for (let i = 0; i < kept.length; i += 1) kept[i] = block[(i + 1) * keep - 1] ?? 0;
      products.add(kept);
      products.compare(window.shortest, curve);
      reader.read(curve, likeness);
    },
    peak(hops, lag) {
      products.compare(hops, curve);
      const peak = finePeak(curve, lag / keep);
      return peak && { lag: peak.lag * keep, height: peak.height };
    },
  };
};
