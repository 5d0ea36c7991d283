import { elementAt } from '../theory/element-at';
import { createDipFinder, DIP_HOPS, type EnergyDip } from './energy-dip';

/** Keeps products of samples with earlier samples, hop by hop, so that a window of any length is a sum of hops. */
export interface LagProducts {
  /**
   * Takes the next hop in; it must have the agreed length. `afterNote` when what sounded just before was a note, of
   * which a room keeps a part: where the sound rises over that, short windows have it taken off.
   */
  add(hop: Float64Array, afterNote: boolean): void;
  /**
   * Compares the last `hops` hops with what came before, at the lags from `first` to `last` (0 and the longest when
   * absent): fills `likeness` there (−1 to 1; 1 where the window repeats what came before, whatever its growth in
   * level).
   */
  compare(hops: number, likeness: Float64Array, first?: number, last?: number): void;
}

export interface LagProductOptions {
  /** Samples in a hop. */
  readonly hop: number;
  /** Longest lag, in samples. */
  readonly longestLag: number;
  /** Longest window, in hops. */
  readonly longestWindow: number;
}

/** Energies below this are rounding errors. */
const NOTHING = 1e-20;

/** Lags whose products are made in one loop, so that each sample is read once: more leave no registers for the sums. */
const TOGETHER = 6;

/** Products of the last `hop` samples with those before, at every lag. */
const multiply = (past: Float64Array, hop: number, into: Float64Array): void => {
  const end = past.length;
  for (let lag = 0; lag < into.length; lag += TOGETHER) {
    let a = 0;
    let b = 0;
    let c = 0;
    let d = 0;
    let e = 0;
    let f = 0;
    let at = end - hop - lag;
    let p1 = past[at - 1] ?? 0;
    let p2 = past[at - 2] ?? 0;
    let p3 = past[at - 3] ?? 0;
    let p4 = past[at - 4] ?? 0;
    let p5 = past[at - 5] ?? 0;
    for (let n = end - hop; n < end; n += 1) {
      const x = past[n] ?? 0;
      const p0 = past[at] ?? 0;
      a += x * p0;
      b += x * p1;
      c += x * p2;
      d += x * p3;
      e += x * p4;
      f += x * p5;
      p5 = p4;
      p4 = p3;
      p3 = p2;
      p2 = p1;
      p1 = p0;
      at += 1;
    }
    into[lag] = a;
    into[lag + 1] = b;
    into[lag + 2] = c;
    into[lag + 3] = d;
    into[lag + 4] = e;
    into[lag + 5] = f;
  }
};

/** Hops looked back over for what sounded before, and of the longest window from which that is taken off. */
const BEFORE = { hops: 9, window: 3 } as const;
/** At least so much of a window's energy counts as new. */
const NEW = 0.3;

interface Span {
  readonly first: number;
  readonly last: number;
  /** Energy in the window, and what of it sounded before. */
  readonly energy: number;
  readonly old: number;
}

/** Divides the sums of products over the last `length` samples by the energies at both ends of each lag. */
const normalise = (
  past: Float64Array,
  length: number,
  likeness: Float64Array,
  { first, last, energy, old }: Span,
): void => {
  let earlier = energy;
  let start = past.length - length;
  let end = past.length;
  if (first === 0) likeness[0] = energy > NOTHING ? 1 : 0;
  const now = Math.max(energy - old, NEW * energy);
  for (let lag = 1; lag <= last; lag += 1) {
    start -= 1;
    end -= 1;
    const come = past[start] ?? 0;
    const gone = past[end] ?? 0;
    earlier += come * come - gone * gone;
    if (lag < first) continue;
    const both = now * Math.max(earlier - old, NEW * earlier);
    likeness[lag] =
      both > NOTHING * NOTHING ? Math.max(-1, Math.min(1, (likeness[lag] ?? 0) / Math.sqrt(both))) : 0;
  }
};

/**
 * The likeness at lag τ over a window is Σ x[n]·x[n−τ] / √(Σ x[n]² · Σ x[n−τ]²), the normalised cross-correlation of
 * D. Talkin, "A robust algorithm for pitch tracking" (1995). Lags are whole samples from 0 to the longest.
 */
export const createLagProducts = ({ hop, longestLag, longestWindow }: LagProductOptions): LagProducts => {
  const lagCount = TOGETHER * Math.ceil((longestLag + 1) / TOGETHER);
  const past = new Float64Array(lagCount + (longestWindow + 1) * hop);
  const products = Array.from({ length: longestWindow }, () => new Float64Array(lagCount));
  const dips = createDipFinder(Math.min(BEFORE.hops, longestWindow));
  let dip: EnergyDip | null = null;
  let latest = 0;

  /** Adds the products of a hop so many times; returns its energy. */
  const addTo = (
    sums: Float64Array,
    back: number,
    times: number,
    [first, last]: readonly [number, number],
  ): number => {
    const slot = elementAt(products, (latest - back + longestWindow) % longestWindow);
    for (let lag = first; lag <= last; lag += 1) sums[lag] = (sums[lag] ?? 0) + times * (slot[lag] ?? 0);
    return slot[0] ?? 0;
  };

  return {
    add(samples, afterNote) {
      past.copyWithin(0, hop);
      past.set(samples, past.length - hop);
      latest = (latest + 1) % longestWindow;
      const slot = elementAt(products, latest);
      multiply(past, hop, slot);
      const found = dips.add(slot[0] ?? 0);
      dip = afterNote ? found : null;
    },
    compare(hops, likeness, first = 0, last = longestLag) {
      const lags = [first, last] as const;
      likeness.fill(0, first, last + 1);
      let energy = 0;
      for (let back = 0; back < hops; back += 1) energy += addTo(likeness, back, 1, lags);
      let old = 0;
      if (dip !== null && hops <= BEFORE.window) {
        const { back, share, energy } = dip;
        for (let i = 0; i < DIP_HOPS; i += 1) addTo(likeness, back + i, (-hops * share) / DIP_HOPS, lags);
        old = hops * share * energy;
      }
      normalise(past, hops * hop, likeness, { first, last, energy, old });
    },
  };
};
