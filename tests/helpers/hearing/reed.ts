/**
 * A harp made by chance: how each of its reeds sounds, how it is tuned and how it is breathed. Models differ widely on
 * purpose, since no two harps, mouths and microphones are alike; the ranges lie around published figures (the second
 * harmonic above the first: a tester's comparison of 1997 on the harp-l list; the third up to 10 dB above it: measured
 * on FluidR3 GM, program 22; slow attacks of long reeds: "Modes of reed vibration and transient phenomena in free
 * reed instruments", J. Acoust. Soc. Am.; pulses of air: "The physics of free reeds", colinpykett.org.uk).
 */
import type { Sound } from '../../../src/core/harp/harp';
import { createRandom, type Random, seedFrom } from '../../../src/core/theory/random';
import { amplitude, between, betweenRatios, happens, normal, weighted } from './chance';

/** Most harmonics a reed is given. */
export const HARMONICS = 36;

export interface Reeds {
  /** Amplitudes of harmonics 1, 2 … of a sound at full breath, of unit sum of squares. */
  readonly spectrumOf: (sound: Sound) => Float64Array;
  /** Phases of the harmonics, in radians. */
  readonly phasesOf: (sound: Sound) => Float64Array;
  /** How far the reed is off what the harp's table says. Cents. */
  readonly mistuning: (sound: Sound) => number;
  /** Rise from 10 to 90 % of a breath attack. Seconds. */
  readonly rise: (hz: number) => number;
  /** Gain of mouth, hands and microphone at a frequency. */
  readonly colour: (hz: number) => number;
  /** Breath noise re the tone. Amplitude. */
  readonly breath: number;
  /** The reed beside, sounding along. Amplitude; 0 when the lips seal. */
  readonly leak: number;
}

type Family = (random: Random) => Float64Array;

/** Falls evenly, with odd or even harmonics favoured and every one a little off. */
const slope: Family = (random) => {
  const perOctave = between(random, 2, 9);
  const odd = between(random, -3, 9);
  const spread = between(random, 1, 6);
  return new Float64Array(HARMONICS).map((_, i) => {
    const k = i + 1;
    const favour = k > 1 && k % 2 === 1 && k < 9 ? odd : 0;
    return amplitude(-perOctave * Math.log2(k) + favour + (k > 1 ? spread * normal(random) : 0));
  });
};

/** The pulse of air that a tongue lets through while it swings out of its slot, differentiated as sound radiates. */
const pulse: Family = (random) => {
  const opening = between(random, -0.5, 0.6);
  const power = between(random, 1, 2.5);
  const back = between(random, 0, 0.5);
  const size = 256;
  const wave = Array.from({ length: size }, (_, i) => {
    const x = Math.sin((2 * Math.PI * i) / size);
    return Math.max(0, x - opening) ** power + back * Math.max(0, -x - 0.5) ** power;
  });
  return new Float64Array(HARMONICS).map((_, i) => {
    const k = i + 1;
    let [re, im] = [0, 0];
    wave.forEach((value, n) => {
      re += value * Math.cos((2 * Math.PI * k * n) / size);
      im += value * Math.sin((2 * Math.PI * k * n) / size);
    });
    return Math.hypot(re, im) * Math.sqrt(k) * amplitude(1.5 * normal(random));
  });
};

/** A strong second or third harmonic: traps for who listens for the octave or the twelfth. */
const trap: Family = (random) => {
  const made = slope(random);
  if (happens(random, 0.5)) made[1] = made[0] * amplitude(between(random, 3, 9));
  else made[2] = made[0] * amplitude(between(random, 5, 11));
  return made;
};

const unit = (values: Float64Array): Float64Array => {
  const size = Math.sqrt(values.reduce((sum, value) => sum + value * value, 0));
  return values.map((value) => value / size);
};

/** A deep bend is darker, an overbend pinched (common practice, no source). */
const techniqueGain = ({ technique, bend }: Sound, k: number, random: Random): number => {
  if (technique === 'bend') return k < 5 ? 1 : amplitude(-between(random, 1, 2.5) * bend);
  return technique === 'overbend' && k > 1 ? amplitude(between(random, -9, -1)) : 1;
};

/** Peaks and dips of mouth, hands and microphone, and the end of what it takes in. */
const createColour = (random: Random): ((hz: number) => number) => {
  const bells = Array.from({ length: 3 }, () => ({
    hz: betweenRatios(random, 400, 5000),
    width: between(random, 0.3, 0.9),
    gain: between(random, -6, 7),
  }));
  const top = betweenRatios(random, 5000, 14000);
  const table = Array.from({ length: 481 }, (_, i) => {
    const hz = Math.max(20, i * 50);
    const level = bells.reduce(
      (sum, bell) => sum + bell.gain * Math.exp(-((Math.log2(hz / bell.hz) / bell.width) ** 2)),
      0,
    );
    return amplitude(level) / Math.sqrt(1 + (hz / top) ** 4);
  });
  return (hz) => table[Math.min(480, Math.round(hz / 50))];
};

/** Makes a harp of a seed. */
export const createReeds = (seed: number): Reeds => {
  const random = createRandom(seedFrom(seed, 'reeds'));
  const family = weighted<Family>(random, [
    [slope, 4],
    [pulse, 4],
    [trap, 2],
  ]);
  const inPhase = happens(random, 0.5);
  const tuning = weighted(random, [
    [0, 2],
    [3, 5],
    [7, 2],
  ]);
  const slow = betweenRatios(random, 0.6, 1.6);
  const own = (label: string, { hole, breath, technique, bend }: Sound): Random =>
    createRandom(seedFrom(seed, label, hole, breath, technique, bend));
  const reedOf = ({ hole, breath }: Sound): Random => createRandom(seedFrom(seed, 'reed', hole, breath));
  return {
    spectrumOf: (sound) => {
      const base = family(reedOf(sound));
      const change = own('technique', sound);
      return unit(base.map((value, i) => value * techniqueGain(sound, i + 1, change)));
    },
    phasesOf: (sound) => {
      const phases = own('phases', sound);
      return new Float64Array(HARMONICS).map((_, i) =>
        inPhase ? 0.2 * (i + 1) * normal(phases) : 2 * Math.PI * phases(),
      );
    },
    mistuning: (sound) => tuning * Math.max(-2, Math.min(2, normal(reedOf(sound)))),
    rise: (hz) => slow * (0.012 + 0.022 * Math.min(1.5, (250 / hz) ** 1.2)),
    colour: createColour(random),
    breath: amplitude(between(random, -42, -17)),
    leak: happens(random, 0.25) ? amplitude(between(random, -36, -22)) : 0,
  };
};
