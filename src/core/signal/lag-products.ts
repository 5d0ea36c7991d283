import { elementAt } from '../theory/element-at';
import { createDipFinder, DIP_HOPS, type EnergyDip } from './energy-dip';

/** Keeps products of samples with earlier samples, by half hops, so that a window of any length is a sum of them. */
export interface LagProducts {
  /**
   * Takes the next half of a hop in; it must have the agreed length. `afterNote` when what sounded just before was a
   * note, of which a room keeps a part: where the sound rises over that, short windows have it taken off.
   */
  add(half: Float64Array, afterNote: boolean): void;
  /**
   * Compares a window as long as `hops` hops, up to the latest half, with what came before, at the lags from `first` to `last` (0 and the longest when
   * absent): fills `likeness` there (−1 to 1; 1 where the window repeats what came before, whatever its growth in
   * level).
   */
  compare(hops: number, likeness: Float64Array, first?: number, last?: number): void;
}

export interface LagProductOptions {
  /** Samples in a hop, an even number. */
  readonly hop: number;
  /** Longest lag, in samples. */
  readonly longestLag: number;
  /** Longest window, in hops. */
  readonly longestWindow: number;
}

/** Energies below this are rounding errors. */
const NOTHING = 1e-20;

/** Products of the last `count` samples with those before, at every lag: four lags at once, so that each sample is read once. */
const multiply = (past: Float64Array, count: number, into: Float64Array): void => {
  const end = past.length;
  for (let lag = 0; lag < into.length; lag += 4) {
    let a = 0;
    let b = 0;
    let c = 0;
    let d = 0;
    let at = end - count - lag;
    let p1 = past[at - 1] ?? 0;
    let p2 = past[at - 2] ?? 0;
    let p3 = past[at - 3] ?? 0;
    for (let n = end - count; n < end; n += 1) {
      const x = past[n] ?? 0;
      const p0 = past[at] ?? 0;
      a += x * p0;
      b += x * p1;
      c += x * p2;
      d += x * p3;
      p3 = p2;
      p2 = p1;
      p1 = p0;
      at += 1;
    }
    into[lag] = a;
    into[lag + 1] = b;
    into[lag + 2] = c;
    into[lag + 3] = d;
  }
};

/** Hops looked back over for what sounded before, and of the longest window from which that is taken off. */
const BEFORE = { hops: 9, window: 3 } as const;
/** At least so much of a window's energy counts as new. */
const NEW = 0.3;

/** Adds products so many times; returns their energy. */
const addTo = (
  sums: Float64Array,
  products: Float64Array,
  times: number,
  [first, last]: readonly [number, number],
): number => {
  for (let lag = first; lag <= last; lag += 1) sums[lag] = (sums[lag] ?? 0) + times * (products[lag] ?? 0);
  return products[0] ?? 0;
};

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
  const lagCount = 4 * Math.ceil((longestLag + 1) / 4);
  const past = new Float64Array(lagCount + (longestWindow + 1) * hop);
  const row = (): Float64Array => new Float64Array(lagCount);
  /** Of the last whole hops, of the second half of each, and of the first half of the next. */
  const products = Array.from({ length: longestWindow }, row);
  const endings = Array.from({ length: longestWindow }, row);
  const beginning = row();
  let begun = false;
  const dips = createDipFinder(Math.min(BEFORE.hops, longestWindow));
  let dip: EnergyDip | null = null;
  let latest = 0;

  const slotOf = (back: number): number => (latest - back + longestWindow) % longestWindow;
  const addHalf = (half: Float64Array): EnergyDip | null => {
    past.copyWithin(0, half.length);
    past.set(half, past.length - half.length);
    begun = !begun;
    if (begun) {
      multiply(past, half.length, beginning);
      return dips.before(2 * (beginning[0] ?? 0));
    }
    latest = slotOf(-1);
    const whole = elementAt(products, latest);
    const ending = elementAt(endings, latest);
    multiply(past, half.length, ending);
    for (let lag = 0; lag < lagCount; lag += 1) whole[lag] = (beginning[lag] ?? 0) + (ending[lag] ?? 0);
    return dips.add(whole[0] ?? 0);
  };
  /** Adds up the products of the latest window; returns its energy. */
  const sumUp = (sums: Float64Array, hops: number, lags: readonly [number, number]): number => {
    sums.fill(0, lags[0], lags[1] + 1);
    const whole = begun ? hops - 1 : hops;
    let energy = 0;
    for (let back = 0; back < whole; back += 1)
      energy += addTo(sums, elementAt(products, slotOf(back)), 1, lags);
    if (!begun) return energy;
    return energy + addTo(sums, beginning, 1, lags) + addTo(sums, elementAt(endings, slotOf(whole)), 1, lags);
  };

  return {
    add(half, afterNote) {
      const found = addHalf(half);
      dip = afterNote ? found : null;
    },
    compare(hops, likeness, first = 0, last = longestLag) {
      const lags = [first, last] as const;
      const energy = sumUp(likeness, hops, lags);
      let old = 0;
      if (dip !== null && hops <= BEFORE.window) {
        const { back, share, energy } = dip;
        for (let i = 0; i < DIP_HOPS; i += 1)
          addTo(likeness, elementAt(products, slotOf(back + i)), (-hops * share) / DIP_HOPS, lags);
        old = hops * share * energy;
      }
      normalise(past, hops * hop, likeness, { first, last, energy, old });
    },
  };
};
