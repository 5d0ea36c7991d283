import FFT from 'fft.js';
import { elementAt } from '../theory/element-at';

/** Learns how a sound that was sent out comes back, and takes that away from what is heard. */
export interface LeakFilter {
  /**
   * Takes a hop of what was sent out and one of what is heard; fills `rest` with what the filter cannot explain and
   * `leak` with what it takes away.
   */
  step(hops: { sent: Float64Array; heard: Float64Array; rest: Float64Array; leak: Float64Array }): void;
  /** Makes the filter begin so many hops after the sound was sent; what was learned moves along. */
  startAt(hops: number): void;
}

export interface LeakFilterOptions {
  /** Samples in a hop, a power of two. */
  readonly hop: number;
  /** Length of the filter in hops. */
  readonly partitions: number;
  /** Latest start of the filter, in hops. */
  readonly latest: number;
}

/** How firmly the way from speaker to microphone stays as it is, from hop to hop: lower follows drift sooner. */
const FIRMNESS = 0.9995;
/** Doubt at the beginning, as power of the unknown response. */
const DOUBT = 0.1;
/** How slowly the estimate of everything else in the sound changes, from hop to hop. */
const SLOWNESS = 0.85;
const FORGET = FIRMNESS * FIRMNESS;
const NOTHING = 1e-12;

/**
 * A partitioned-block frequency-domain Kalman filter (F. Kuech, E. Mabande and G. Enzner, "State-space architecture of
 * the partitioned-block-based acoustic echo controller", ICASSP 2014): overlap-save blocks of a hop, and for every
 * partition and frequency a step that is small where the player sounds and large where the band is alone.
 */
export const createLeakFilter = ({ hop, partitions, latest }: LeakFilterOptions): LeakFilter => {
  const size = 2 * hop;
  const bins = hop + 1;
  const fft = new FFT(size);
  const history = Array.from({ length: partitions + latest }, () => new Float64Array(2 * bins));
  let weights = Array.from({ length: partitions }, () => new Float64Array(2 * bins));
  let doubts = Array.from({ length: partitions }, () => new Float64Array(bins).fill(DOUBT));
  const powers = history.map(() => new Float64Array(bins));
  const before = new Float64Array(hop);
  const others = new Float64Array(bins);
  const steps = new Float64Array(bins);
  const input = new Float64Array(size);
  const time = fft.createComplexArray();
  const spectrum = fft.createComplexArray();
  const errors = fft.createComplexArray();
  let start = 0;
  let newest = 0;
  let turn = 0;

  const placeOf = (partition: number): number =>
    (newest - start - partition + 2 * history.length) % history.length;
  const sentAt = (partition: number): Float64Array => elementAt(history, placeOf(partition));

  const predict = (leak: Float64Array): void => {
    const sum = spectrum;
    for (let k = 0; k < 2 * bins; k += 1) sum[k] = 0;
    for (let p = 0; p < partitions; p += 1) {
      const x = sentAt(p);
      const w = elementAt(weights, p);
      for (let k = 0; k < 2 * bins; k += 2) {
        sum[k] = (sum[k] ?? 0) + ((x[k] ?? 0) * (w[k] ?? 0) - (x[k + 1] ?? 0) * (w[k + 1] ?? 0));
        sum[k + 1] = (sum[k + 1] ?? 0) + ((x[k] ?? 0) * (w[k + 1] ?? 0) + (x[k + 1] ?? 0) * (w[k] ?? 0));
      }
    }
    fft.completeSpectrum(sum);
    fft.inverseTransform(time, sum);
    for (let i = 0; i < hop; i += 1) leak[i] = time[2 * (hop + i)] ?? 0;
  };

  const weigh = (): void => {
    for (let k = 0; k < bins; k += 1) {
      const power =
        (errors[2 * k] ?? 0) * (errors[2 * k] ?? 0) + (errors[2 * k + 1] ?? 0) * (errors[2 * k + 1] ?? 0);
      others[k] = (others[k] ?? 0) + (1 - SLOWNESS) * (power - (others[k] ?? 0));
      steps[k] = 2 * (others[k] ?? 0) + NOTHING;
    }
    for (let p = 0; p < partitions; p += 1) {
      const power = elementAt(powers, placeOf(p));
      const doubt = elementAt(doubts, p);
      for (let k = 0; k < bins; k += 1) steps[k] = (steps[k] ?? 0) + (power[k] ?? 0) * (doubt[k] ?? 0);
    }
    for (let k = 0; k < bins; k += 1) steps[k] = 1 / (steps[k] ?? 0);
  };

  const learn = (): void => {
    for (let p = 0; p < partitions; p += 1) {
      const x = sentAt(p);
      const power = elementAt(powers, placeOf(p));
      const w = elementAt(weights, p);
      const doubt = elementAt(doubts, p);
      for (let k = 0; k < bins; k += 1) {
        const step = (doubt[k] ?? 0) * (steps[k] ?? 0);
        const re = x[2 * k] ?? 0;
        const im = x[2 * k + 1] ?? 0;
        const real = (w[2 * k] ?? 0) + step * (re * (errors[2 * k] ?? 0) + im * (errors[2 * k + 1] ?? 0));
        const imaginary =
          (w[2 * k + 1] ?? 0) + step * (re * (errors[2 * k + 1] ?? 0) - im * (errors[2 * k] ?? 0));
        w[2 * k] = real;
        w[2 * k + 1] = imaginary;
        doubt[k] =
          FORGET * (1 - 0.5 * step * (power[k] ?? 0)) * (doubt[k] ?? 0) +
          (1 - FORGET) * (real * real + imaginary * imaginary) +
          NOTHING;
      }
    }
  };

  /** A partition's response is no longer than a hop: one after another is cut back to that. */
  const constrain = (w: Float64Array): void => {
    for (let k = 0; k < 2 * bins; k += 1) spectrum[k] = w[k] ?? 0;
    fft.completeSpectrum(spectrum);
    fft.inverseTransform(time, spectrum);
    for (let i = 0; i < size; i += 1) input[i] = i < hop ? (time[2 * i] ?? 0) : 0;
    fft.realTransform(spectrum, input);
    for (let k = 0; k < 2 * bins; k += 1) w[k] = spectrum[k] ?? 0;
  };

  const remember = (sent: Float64Array): void => {
    input.set(before);
    input.set(sent, hop);
    before.set(sent);
    fft.realTransform(spectrum, input);
    newest = (newest + 1) % history.length;
    const x = elementAt(history, newest);
    const power = elementAt(powers, newest);
    for (let k = 0; k < 2 * bins; k += 1) x[k] = spectrum[k] ?? 0;
    for (let k = 0; k < bins; k += 1) power[k] = (x[2 * k] ?? 0) ** 2 + (x[2 * k + 1] ?? 0) ** 2;
  };

  return {
    step({ sent, heard, rest, leak }) {
      remember(sent);
      predict(leak);
      for (let i = 0; i < hop; i += 1) rest[i] = (heard[i] ?? 0) - (leak[i] ?? 0);
      input.fill(0, 0, hop);
      input.set(rest, hop);
      fft.realTransform(errors, input);
      weigh();
      learn();
      constrain(elementAt(weights, turn));
      turn = (turn + 1) % partitions;
    },
    startAt(hops) {
      const by = Math.max(0, Math.min(latest, hops)) - start;
      start += by;
      weights = weights.map((_, p) => weights[p + by] ?? new Float64Array(2 * bins));
      doubts = doubts.map((_, p) => doubts[p + by] ?? new Float64Array(bins).fill(DOUBT));
    },
  };
};
