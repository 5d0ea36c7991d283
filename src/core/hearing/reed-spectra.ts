import type { Breath, Sound } from '../harp/harp';
import { createFrontEnd } from '../signal/front-end';
import { createSlidingSpectrum, SPECTRUM_SAMPLES } from '../signal/sliding-spectrum';

/** How one reed sounds: its power spectrum, of unit sum. */
export interface ReedSpectrum {
  readonly hole: number;
  readonly breath: Breath;
  readonly power: Float64Array;
}

/** A stretch in which one reed sounds alone. */
export interface LoneReed {
  readonly sound: Pick<Sound, 'hole' | 'breath'>;
  /** Seconds. */
  readonly from: number;
  readonly to: number;
}

/** A recording from which the reeds of a harp are learnt. */
export interface Learning {
  readonly samples: Float32Array;
  /** Hz. */
  readonly sampleRate: number;
  /** Each natural note of the harp once, as when the harp is made known to the ear. */
  readonly reeds: readonly LoneReed[];
}

/** Samples in a hop at the working rate. */
export const SPECTRUM_HOP = 256;
/** High-pass corner: below the lowest reed of a low harp. Hz. */
export const SPECTRUM_LOWEST = 75;
/** Left out after a note begins. Seconds. */
const ATTACK = 0.06;

/** Scales a spectrum to unit sum; silence stays silence. */
export const unitPower = (power: Float64Array): Float64Array => {
  const sum = power.reduce((total, value) => total + value, 0);
  return sum > 0 ? power.map((value) => value / sum) : power.slice();
};

/**
 * Learns the spectra of a harp's reeds from a recording of them one by one, in the order of `reeds`.
 * A reed whose stretch is too short for one window is left out.
 */
export const learnReedSpectra = ({ samples, sampleRate, reeds }: Learning): readonly ReedSpectrum[] => {
  const front = createFrontEnd({ sampleRate, hop: SPECTRUM_HOP, lowest: SPECTRUM_LOWEST });
  const spectrum = createSlidingSpectrum(front.rate);
  const sums = new Map<LoneReed, Float64Array>();
  let taken = 0;
  front.push(samples, (hop) => {
    spectrum.push(hop);
    taken += hop.length;
    const to = taken / front.rate;
    const from = to - SPECTRUM_SAMPLES / front.rate;
    const lone = reeds.find((reed) => from >= reed.from + ATTACK && to <= reed.to);
    if (lone === undefined) return;
    const power = spectrum.power();
    const sum = sums.get(lone);
    sums.set(lone, sum === undefined ? power.slice() : sum.map((value, i) => value + (power[i] ?? 0)));
  });
  return reeds.flatMap((lone) => {
    const { sound } = lone;
    const power = sums.get(lone);
    return power === undefined ? [] : [{ hole: sound.hole, breath: sound.breath, power: unitPower(power) }];
  });
};
