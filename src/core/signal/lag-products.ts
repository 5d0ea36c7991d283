import { elementAt } from '../theory/element-at';
/** Keeps products of samples with earlier samples, hop by hop, so that a window of any length is a sum of hops. */
export interface LagProducts {
  /** Takes the next hop in; it must have the agreed length. */
  add(hop: Float64Array): void;
  /**
   * Compares the last `hops` hops with what came before, at every lag: fills `likeness` (longest lag + 1 values,
   * −1 to 1; 1 where the window repeats what came before, whatever its growth in level) and returns the mean square
   * of the window.
   */
  compare(hops: number, likeness: Float64Array): number;
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

/** Products of the last `hop` samples with those before, at every lag: four lags at once, so that each sample is read once. */
const multiply = (past: Float64Array, hop: number, into: Float64Array): void => {
  const end = past.length;
  for (let lag = 0; lag < into.length; lag += 4) {
    let a = 0;
    let b = 0;
    let c = 0;
    let d = 0;
    let at = end - hop - lag;
    let p1 = past[at - 1] ?? 0;
    let p2 = past[at - 2] ?? 0;
    let p3 = past[at - 3] ?? 0;
    for (let n = end - hop; n < end; n += 1) {
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

/** Divides the sums of products over the last `length` samples by the energies at both ends of each lag; returns the first. */
const normalise = (
  past: Float64Array,
  length: number,
  likeness: Float64Array,
  longestLag: number,
): number => {
  const energy = likeness[0] ?? 0;
  let earlier = energy;
  let first = past.length - length;
  let last = past.length;
  for (let lag = 1; lag <= longestLag; lag += 1) {
    first -= 1;
    last -= 1;
    earlier += (past[first] ?? 0) * (past[first] ?? 0) - (past[last] ?? 0) * (past[last] ?? 0);
    const both = energy * earlier;
    likeness[lag] =
      both > NOTHING * NOTHING ? Math.max(-1, Math.min(1, (likeness[lag] ?? 0) / Math.sqrt(both))) : 0;
  }
  likeness[0] = energy > NOTHING ? 1 : 0;
  return energy;
};

/**
 * The likeness at lag τ over a window is Σ x[n]·x[n−τ] / √(Σ x[n]² · Σ x[n−τ]²), the normalised cross-correlation of
 * D. Talkin, "A robust algorithm for pitch tracking" (1995). Lags are whole samples from 0 to the longest.
 */
export const createLagProducts = ({ hop, longestLag, longestWindow }: LagProductOptions): LagProducts => {
  const lagCount = 4 * Math.ceil((longestLag + 1) / 4);
  const past = new Float64Array(lagCount + (longestWindow + 1) * hop);
  const products = Array.from({ length: longestWindow }, () => new Float64Array(lagCount));
  let latest = 0;

  return {
    add(samples) {
      past.copyWithin(0, hop);
      past.set(samples, past.length - hop);
      latest = (latest + 1) % longestWindow;
      multiply(past, hop, elementAt(products, latest));
    },
    compare(hops, likeness) {
      likeness.fill(0);
      for (let back = 0; back < hops; back += 1) {
        const slot = elementAt(products, (latest - back + longestWindow) % longestWindow);
        for (let lag = 0; lag <= longestLag; lag += 1)
          likeness[lag] = (likeness[lag] ?? 0) + (slot[lag] ?? 0);
      }
      return normalise(past, hops * hop, likeness, longestLag) / (hops * hop);
    },
  };
};
