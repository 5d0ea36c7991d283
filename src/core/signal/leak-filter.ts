import FFT from 'fft.js';
import { elementAt } from '../theory/element-at';
import { createSentHistory, type SentBlock } from './sent-history';

/** Learns how a sound that was sent out comes back, and takes that away from what is heard. */
export interface LeakFilter {
  /**
   * Takes a hop of what was sent out and of what is heard; fills `rest` with what the filter cannot explain and `leak`
   * with what it takes away.
   */
  step(hops: { sent: Float64Array; heard: Float64Array; rest: Float64Array; leak: Float64Array }): void;
  /** Mean square of the leak that may be left in the latest hop, by the filter's own reckoning; much before it has learned. */
  doubt(): number;
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

/** What is known of a hop's length of the way from speaker to microphone. */
interface Partition {
  /** Complex response, laid out as spectra are. */
  readonly response: Float64Array;
  /** Expected square of its error. */
  readonly doubt: Float64Array;
}

/** How firmly the way from speaker to microphone stays as it is, from hop to hop: lower follows drift sooner. */
const FIRMNESS = 0.9995;
/** Doubt at the beginning, as power of the unknown response. */
const DOUBT = 0.1;
/** How slowly the estimate of everything else in the sound changes, from hop to hop. */
const SLOWNESS = 0.85;
const FORGET = FIRMNESS * FIRMNESS;
const NOTHING = 1e-12;

const unknown = (bins: number): Partition => ({
  response: new Float64Array(2 * bins),
  doubt: new Float64Array(bins).fill(DOUBT),
});

/** Adds the product of two spectra to a third. */
const addProduct = (sum: number[], x: Float64Array, w: Float64Array): void => {
  for (let k = 0; k < x.length; k += 2) {
    sum[k] = (sum[k] ?? 0) + ((x[k] ?? 0) * (w[k] ?? 0) - (x[k + 1] ?? 0) * (w[k + 1] ?? 0));
    sum[k + 1] = (sum[k + 1] ?? 0) + ((x[k] ?? 0) * (w[k + 1] ?? 0) + (x[k + 1] ?? 0) * (w[k] ?? 0));
  }
};

/** Adds powers, each by its weight. */
const addWeighted = (sum: Float64Array, power: Float64Array, weight: Float64Array): void => {
  for (let k = 0; k < sum.length; k += 1) sum[k] = (sum[k] ?? 0) + (power[k] ?? 0) * (weight[k] ?? 0);
};

/** Moves a partition towards what explains the errors, by the Kalman gain, and brings its doubt up to date. */
const learn = (
  { response, doubt }: Partition,
  { spectrum, power }: SentBlock,
  errors: readonly number[],
  steps: Float64Array,
): void => {
  for (let k = 0; k < doubt.length; k += 1) {
    const step = (doubt[k] ?? 0) * (steps[k] ?? 0);
    const re = spectrum[2 * k] ?? 0;
    const im = spectrum[2 * k + 1] ?? 0;
    const real = (response[2 * k] ?? 0) + step * (re * (errors[2 * k] ?? 0) + im * (errors[2 * k + 1] ?? 0));
    const imaginary =
      (response[2 * k + 1] ?? 0) + step * (re * (errors[2 * k + 1] ?? 0) - im * (errors[2 * k] ?? 0));
    response[2 * k] = real;
    response[2 * k + 1] = imaginary;
    doubt[k] =
      FORGET * (1 - 0.5 * step * (power[k] ?? 0)) * (doubt[k] ?? 0) +
      (1 - FORGET) * (real * real + imaginary * imaginary) +
      NOTHING;
  }
};

/** Follows the power of everything but the leak in each frequency. */
const followOthers = (others: Float64Array, errors: readonly number[]): void => {
  for (let k = 0; k < others.length; k += 1) {
    const power =
      (errors[2 * k] ?? 0) * (errors[2 * k] ?? 0) + (errors[2 * k + 1] ?? 0) * (errors[2 * k + 1] ?? 0);
    others[k] = (others[k] ?? 0) + (1 - SLOWNESS) * (power - (others[k] ?? 0));
  }
};

/** Cuts responses back to a hop, as long as a partition lasts. */
const createConstraint = (hop: number): ((response: Float64Array) => void) => {
  const fft = new FFT(2 * hop);
  const spectrum = fft.createComplexArray();
  const time = fft.createComplexArray();
  const input = new Float64Array(2 * hop);
  return (response) => {
    for (let k = 0; k < response.length; k += 1) spectrum[k] = response[k] ?? 0;
    fft.completeSpectrum(spectrum);
    fft.inverseTransform(time, spectrum);
    for (let i = 0; i < hop; i += 1) input[i] = time[2 * i] ?? 0;
    fft.realTransform(spectrum, input);
    for (let k = 0; k < response.length; k += 1) response[k] = spectrum[k] ?? 0;
  };
};

/** From a spectrum to the latter half of its block, and from a hop in that place to a spectrum. */
const createOverlapSave = (hop: number) => {
  const fft = new FFT(2 * hop);
  const time = fft.createComplexArray();
  const input = new Float64Array(2 * hop);
  return {
    spectrum: () => fft.createComplexArray(),
    toTime(spectrum: number[], into: Float64Array): void {
      fft.completeSpectrum(spectrum);
      fft.inverseTransform(time, spectrum);
      for (let i = 0; i < hop; i += 1) into[i] = time[2 * (hop + i)] ?? 0;
    },
    toSpectrum(samples: Float64Array, into: number[]): void {
      input.set(samples, hop);
      fft.realTransform(into, input);
    },
  };
};

/**
 * A partitioned-block frequency-domain Kalman filter (F. Kuech, E. Mabande and G. Enzner, "State-space architecture of
 * the partitioned-block-based acoustic echo controller", ICASSP 2014): overlap-save blocks of a hop, and for every
 * partition and frequency a step that is small where the player sounds and large where the band is alone. One partition
 * after another is held to its length, one in each hop.
 */
export const createLeakFilter = ({ hop, partitions, latest }: LeakFilterOptions): LeakFilter => {
  const bins = hop + 1;
  const history = createSentHistory(hop, partitions + latest);
  const blocks = createOverlapSave(hop);
  const constrain = createConstraint(hop);
  let way = Array.from({ length: partitions }, () => unknown(bins));
  const others = new Float64Array(bins);
  const steps = new Float64Array(bins);
  const prediction = blocks.spectrum();
  const errors = blocks.spectrum();
  let start = 0;
  let turn = 0;
  let doubted = 0;

  const predict = (leak: Float64Array): void => {
    for (let k = 0; k < 2 * bins; k += 1) prediction[k] = 0;
    for (const [p, { response }] of way.entries())
      addProduct(prediction, history.ago(start + p).spectrum, response);
    blocks.toTime(prediction, leak);
  };

  return {
    step({ sent, heard, rest, leak }) {
      history.push(sent);
      predict(leak);
      for (let i = 0; i < hop; i += 1) rest[i] = (heard[i] ?? 0) - (leak[i] ?? 0);
      blocks.toSpectrum(rest, errors);
      followOthers(others, errors);
      doubted = 0;
      steps.fill(0);
      for (const [p, { doubt }] of way.entries()) addWeighted(steps, history.ago(start + p).power, doubt);
      for (let k = 0; k < bins; k += 1) {
        doubted += steps[k] ?? 0;
        steps[k] = 1 / ((steps[k] ?? 0) + 2 * (others[k] ?? 0) + NOTHING);
      }
      for (const [p, partition] of way.entries()) learn(partition, history.ago(start + p), errors, steps);
      constrain(elementAt(way, turn).response);
      turn = (turn + 1) % partitions;
    },
    // Half of the power in all 2 · hop frequencies, of which the other half are the same, is that of a hop (Parseval).
    doubt: () => doubted / (2 * hop * hop),
    startAt(hops) {
      const by = Math.max(0, Math.min(latest, hops)) - start;
      start += by;
      way = way.map((_, p) => way[p + by] ?? unknown(bins));
    },
  };
};
