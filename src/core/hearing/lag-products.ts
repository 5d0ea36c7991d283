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

/**
 * The likeness at lag τ over a window is Σ x[n]·x[n−τ] / √(Σ x[n]² · Σ x[n−τ]²), the normalised cross-correlation of
 * D. Talkin, "A robust algorithm for pitch tracking" (1995). Lags are whole samples from 0 to the longest.
 */
export const createLagProducts = ({ hop, longestLag, longestWindow }: LagProductOptions): LagProducts => {
  const past = new Float64Array(longestLag + (longestWindow + 1) * hop);
  const products = Array.from({ length: longestWindow }, () => new Float64Array(longestLag + 1));
  let latest = 0;

  const multiply = (into: Float64Array): void => {
    const end = past.length;
    const start = end - hop;
    for (let lag = 0; lag <= longestLag; lag += 1) {
      let sum = 0;
      for (let n = start; n < end; n += 1) sum += past[n] * past[n - lag];
      into[lag] = sum;
    }
  };

  const addUp = (hops: number, into: Float64Array): void => {
    into.fill(0);
    for (let back = 0; back < hops; back += 1) {
      const slot = products[(latest - back + longestWindow) % longestWindow];
      for (let lag = 0; lag <= longestLag; lag += 1) into[lag] += slot[lag];
    }
  };

  return {
    add(samples) {
      past.copyWithin(0, hop);
      past.set(samples, past.length - hop);
      latest = (latest + 1) % longestWindow;
      multiply(products[latest]);
    },
    compare(hops, likeness) {
      addUp(hops, likeness);
      const energy = likeness[0];
      let earlier = energy;
      let first = past.length - hops * hop;
      let last = past.length;
      for (let lag = 1; lag <= longestLag; lag += 1) {
        first -= 1;
        last -= 1;
        earlier += past[first] ** 2 - past[last] ** 2;
        const both = Math.sqrt(energy * Math.max(0, earlier));
        likeness[lag] = both > NOTHING ? Math.max(-1, Math.min(1, likeness[lag] / both)) : 0;
      }
      likeness[0] = energy > NOTHING ? 1 : 0;
      return energy / (hops * hop);
    },
  };
};
