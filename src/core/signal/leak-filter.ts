import { elementAt } from '../theory/element-at';
import { createRealFft } from './real-fft';
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
const addProduct = (sum: Float64Array, x: Float64Array, w: Float64Array): void => {
  for (let k = 0; k < x.length; k += 2) {
    const a = x[k] ?? 0;
    const b = x[k + 1] ?? 0;
    const c = w[k] ?? 0;
    const d = w[k + 1] ?? 0;
    sum[k] = (sum[k] ?? 0) + (a * c - b * d);
    sum[k + 1] = (sum[k + 1] ?? 0) + (a * d + b * c);
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
  errors: Float64Array,
  steps: Float64Array,
): void => {
  for (let k = 0; k < doubt.length; k += 1) {
    const doubted = doubt[k] ?? 0;
    const step = doubted * (steps[k] ?? 0);
    const re = spectrum[2 * k] ?? 0;
    const im = spectrum[2 * k + 1] ?? 0;
    const x = errors[2 * k] ?? 0;
    const y = errors[2 * k + 1] ?? 0;
    const real = (response[2 * k] ?? 0) + step * (re * x + im * y);
    const imaginary = (response[2 * k + 1] ?? 0) + step * (re * y - im * x);
    response[2 * k] = real;
    response[2 * k + 1] = imaginary;
    doubt[k] =
      FORGET * (1 - 0.5 * step * (power[k] ?? 0)) * doubted +
      (1 - FORGET) * (real * real + imaginary * imaginary) +
      NOTHING;
  }
};

/** Follows the power of everything but the leak in each frequency. */
const followOthers = (others: Float64Array, errors: Float64Array): void => {
  for (let k = 0; k < others.length; k += 1) {
    const x = errors[2 * k] ?? 0;
    const y = errors[2 * k + 1] ?? 0;
    const power = x * x + y * y;
    others[k] = (others[k] ?? 0) + (1 - SLOWNESS) * (power - (others[k] ?? 0));
  }
};

/** Cuts responses back to a hop, as long as a partition lasts. */
const createConstraint = (hop: number): ((response: Float64Array) => void) => {
  const fft = createRealFft(2 * hop);
  const time = new Float64Array(2 * hop);
  return (response) => {
    fft.toTime(response, time);
    time.fill(0, hop);
    fft.toSpectrum(time, response);
  };
};

/** From a spectrum to the latter half of its block, and from a hop in that place to a spectrum. */
const createOverlapSave = (hop: number) => {
  const fft = createRealFft(2 * hop);
  const time = new Float64Array(2 * hop);
  const input = new Float64Array(2 * hop);
  return {
    toTime(spectrum: Float64Array, into: Float64Array): void {
      fft.toTime(spectrum, time);
      for (let i = 0; i < hop; i += 1) into[i] = time[hop + i] ?? 0;
    },
    toSpectrum(samples: Float64Array, into: Float64Array): void {
      input.set(samples, hop);
      fft.toSpectrum(input, into);
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
  const prediction = new Float64Array(2 * bins);
  const errors = new Float64Array(2 * bins);
  let start = 0;
  let turn = 0;
  let doubted = 0;

  const predict = (leak: Float64Array): void => {
    prediction.fill(0);
    for (let p = 0; p < partitions; p += 1)
      addProduct(prediction, history.ago(start + p).spectrum, elementAt(way, p).response);
    blocks.toTime(prediction, leak);
  };

  return {
    step({ sent, heard, rest, leak }) {
      history.push(sent);
      predict(leak);
      for (let i = 0; i < hop; i += 1) rest[i] = (heard[i] ?? 0) - (leak[i] ?? 0);
      blocks.toSpectrum(rest, errors);
      followOthers(others, errors);
      let sum = 0;
      steps.fill(0);
      for (let p = 0; p < partitions; p += 1)
        addWeighted(steps, history.ago(start + p).power, elementAt(way, p).doubt);
      for (let k = 0; k < bins; k += 1) {
        sum += steps[k] ?? 0;
        steps[k] = 1 / ((steps[k] ?? 0) + 2 * (others[k] ?? 0) + NOTHING);
      }
      doubted = sum;
      for (let p = 0; p < partitions; p += 1) learn(elementAt(way, p), history.ago(start + p), errors, steps);
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
