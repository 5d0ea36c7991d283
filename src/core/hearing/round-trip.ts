/** How long a sound takes from the page through loudspeaker, air and microphone back to the page. */
import FFT from 'fft.js';
import type { Seconds } from '../theory/units';
import { asSeconds } from '../theory/units';

/** The way of a sound out of the loudspeaker and back in through the microphone. */
export interface RoundTrip {
  readonly seconds: Seconds;
  /** How loud it comes back, re what was sent. dB. */
  readonly gain: number;
}

/** A chirp: Hz at its ends, its length in seconds, its amplitude; it keeps to what small loudspeakers can do. */
const CHIRP = { from: 500, to: 6000, seconds: 0.06, amplitude: 0.2 } as const;

/** When chirps are sent, in seconds from the first: uneven, so that none is taken for another. */
export const CHIRPS_AT: readonly number[] = [0.1, 0.57, 1.19, 1.72];
/** Seconds to listen for all of them and the longest way back. */
export const CHIRPS_LAST = 2.6;
/** The longest way that is looked for: wireless loudspeakers take 0.2 s and more. Seconds. */
const LONGEST = 0.7;
/** How far the peak must stand out of the spread of the curve to be believed. */
const CLEAR = 8;
/** The direct sound may be this much weaker than a reflection. */
const DIRECT = 0.5;
/** The curve swings around each peak for so long, in seconds: its highest swing is the peak. */
const LOBES = 0.001;
/** A chirp has begun where it is louder than this. */
const AUDIBLE = 1e-4;
/** The least share in the peak that a chirp has, re the mean of all. */
const ALIKE = 0.4;
const NOTHING = 1e-12;

/** One chirp: an exponential sweep with soft edges. @param sampleRate samples a second. */
export const chirp = (sampleRate: number): Float32Array => {
  const { from, to, seconds, amplitude } = CHIRP;
  const length = Math.round(seconds * sampleRate);
  const growth = Math.log(to / from);
  return Float32Array.from({ length }, (_, i) => {
    const share = i / length;
    const phase = ((2 * Math.PI * from * seconds) / growth) * (Math.exp(growth * share) - 1);
    return amplitude * Math.sin(Math.PI * share) ** 2 * Math.sin(phase);
  });
};

/** Circular cross-correlation: entry `lag` is the sum of `sent[i] * heard[i + lag]`. */
const correlate = (sent: Float32Array, heard: Float32Array, size: number): Float64Array => {
  const fft = new FFT(size);
  const spectrumOf = (samples: Float32Array): number[] => {
    const padded = new Float64Array(size);
    padded.set(samples.subarray(0, size));
    const spectrum = fft.createComplexArray();
    fft.realTransform(spectrum, padded);
    return spectrum;
  };
  const [a, b] = [spectrumOf(sent), spectrumOf(heard)];
  for (let k = 0; k <= size; k += 2) {
    const [ar, ai, br, bi] = [a[k] ?? 0, a[k + 1] ?? 0, b[k] ?? 0, b[k + 1] ?? 0];
    a[k] = ar * br + ai * bi;
    a[k + 1] = ar * bi - ai * br;
  }
  fft.completeSpectrum(a);
  const time = fft.createComplexArray();
  fft.inverseTransform(time, a);
  return Float64Array.from({ length: size }, (_, i) => time[2 * i] ?? 0);
};

/**
 * Whether each chirp by itself comes back by the same way, and not one noise for one of them: their shares in the peak
 * have one sign and are alike.
 */
const everyChirpAgrees = (
  sent: Float32Array,
  heard: Float32Array,
  { lag, sampleRate }: { readonly lag: number; readonly sampleRate: number },
): boolean => {
  const begun = sent.findIndex((value) => Math.abs(value) > AUDIBLE);
  const [first = 0] = CHIRPS_AT;
  const length = Math.round(CHIRP.seconds * sampleRate);
  const shares = CHIRPS_AT.map((at) => {
    const from = begun + Math.round((at - first) * sampleRate);
    let sum = 0;
    for (let i = from; i < from + length; i += 1) sum += (sent[i] ?? 0) * (heard[i + lag] ?? 0);
    return sum;
  });
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  return shares.every((share) => share / mean > ALIKE);
};

/**
 * Finds chirps that were sent in what was heard, by a matched filter: both as the page knows them, from the same moment
 * on, at a sample rate in Hz. Null where they are not heard, as with headphones.
 */
export const findRoundTrip = (
  sent: Float32Array,
  heard: Float32Array,
  sampleRate: number,
): RoundTrip | null => {
  const longest = Math.round(LONGEST * sampleRate);
  const size = 2 ** Math.ceil(Math.log2(Math.max(2, sent.length + longest)));
  const curve = correlate(sent, heard, size);
  const energy = sent.reduce((sum, value) => sum + value * value, 0);
  let top = 0;
  let power = 0;
  for (let lag = 0; lag < longest; lag += 1) {
    const value = Math.abs(curve[lag] ?? 0);
    power += value * value;
    top = Math.max(top, value);
  }
  if (energy < NOTHING || top < CLEAR * Math.sqrt(power / longest) + NOTHING) return null;
  let first = 0;
  while (Math.abs(curve[first] ?? 0) < DIRECT * top) first += 1;
  let lag = first;
  for (let i = first; i < first + LOBES * sampleRate; i += 1) {
    if (Math.abs(curve[i] ?? 0) > Math.abs(curve[lag] ?? 0)) lag = i;
  }
  if (!everyChirpAgrees(sent, heard, { lag, sampleRate })) return null;
  return { seconds: asSeconds(lag / sampleRate), gain: 20 * Math.log10(top / energy + NOTHING) };
};
