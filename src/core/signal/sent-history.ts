import { elementAt } from '../theory/element-at';
import { createRealFft } from './real-fft';

/** A block of what was sent out, of two hops, as a spectrum. */
export interface SentBlock {
  /** Real and imaginary parts in turn, from 0 to half the rate. */
  readonly spectrum: Float64Array;
  readonly power: Float64Array;
}

/** The latest blocks of what was sent out, each overlapping the one before by half. */
export interface SentHistory {
  /** Takes the next hop in. */
  push(hop: Float64Array): void;
  /** The block so many hops ago; 0 is the latest. */
  ago(hops: number): SentBlock;
}

/** Keeps so many blocks of hops of so many samples, a power of two; older ones are overwritten. */
export const createSentHistory = (hop: number, blocks: number): SentHistory => {
  const bins = hop + 1;
  const fft = createRealFft(2 * hop);
  const kept = Array.from({ length: blocks }, () => ({
    spectrum: new Float64Array(2 * bins),
    power: new Float64Array(bins),
  }));
  const before = new Float64Array(hop);
  const input = new Float64Array(2 * hop);
  let newest = 0;
  return {
    push(samples) {
      input.set(before);
      input.set(samples, hop);
      before.set(samples);
      newest = (newest + 1) % blocks;
      const { spectrum, power } = elementAt(kept, newest);
      fft.toSpectrum(input, spectrum);
      for (let k = 0; k < bins; k += 1) {
        const re = spectrum[2 * k] ?? 0;
        const im = spectrum[2 * k + 1] ?? 0;
        power[k] = re * re + im * im;
      }
    },
    ago: (hops) => elementAt(kept, (newest - hops + blocks) % blocks),
  };
};
