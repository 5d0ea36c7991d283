import { createSamplePast } from '../signal/sample-past';

/** A level and the time it belongs to. */
export interface LevelReading {
  /** Seconds of the stream. */
  readonly time: number;
  /** dB. */
  readonly level: number;
}

/**
 * Measures how much of the sound belongs to one reed: the level at its lowest harmonics, which drums and other
 * instruments reach much less than they do the whole level.
 */
export interface ReedMeter {
  /** Takes the next hop. */
  push(hop: Float64Array): void;
  /** The latest level of a reed of this pitch (Hz). */
  now(frequency: number): LevelReading;
  /** The latest level of all that sounds, in the same measure. */
  whole(): number;
  /** That of its highs: of the second difference, which rises by 12 dB an octave. */
  bright(): number;
  /** How loud the second and third harmonic of a pitch (Hz) have been of late against the first. dB. */
  overtones(frequency: number): number;
  /** Its levels over the last moments, oldest first. */
  past(frequency: number): readonly LevelReading[];
}

/** Harmonics above this are left out: vibrato moves them out of the measure. Hz. */
const HIGHEST = 4000;
const MOST_HARMONICS = 10;
/** Long enough to tell a reed from its neighbours' noise, short enough to follow a tongued repeat. */
const WINDOW_SECONDS = 0.008;
const PAST_SECONDS = 0.2;
/** Long enough that, under a raised cosine, a pitch of more than 1000 Hz says nothing at its harmonics. */
const OVERTONES_SECONDS = 0.04;
const NOTHING = 1e-13;

/** A stretch of samples: the first, and the first after it. */
type Stretch = readonly [from: number, to: number];

/**
 * The power at one frequency: the square of the sum of samples, each turned back by an angle, by the recurrence of
 * G. Goertzel (American Mathematical Monthly 65, 1958).
 */
const powerOf = (samples: Float64Array, [from, to]: Stretch, turn: number): number => {
  const twice = 2 * Math.cos(turn);
  let last = 0;
  let before = 0;
  for (let i = from; i < to; i += 1) {
    const now = (samples[i] ?? 0) - before + twice * last;
    before = last;
    last = now;
  }
  return last * last + before * before - twice * last * before;
};

/** The same at two frequencies together, in half of the time: each step of one waits for the step before. */
const powerOfBoth = (samples: Float64Array, [from, to]: Stretch, turn: number, other: number): number => {
  const twice = 2 * Math.cos(turn);
  const twiceOther = 2 * Math.cos(other);
  let last = 0;
  let before = 0;
  let lastOther = 0;
  let beforeOther = 0;
  for (let i = from; i < to; i += 1) {
    const sample = samples[i] ?? 0;
    const now = sample - before + twice * last;
    const nowOther = sample - beforeOther + twiceOther * lastOther;
    before = last;
    last = now;
    beforeOther = lastOther;
    lastOther = nowOther;
  }
  const power = last * last + before * before - twice * last * before;
  return power + lastOther * lastOther + beforeOther * beforeOther - twiceOther * lastOther * beforeOther;
};

/** @param rate samples a second. @param hop samples in a hop. */
export const createReedMeter = (rate: number, hop: number): ReedMeter => {
  const windowHops = Math.max(1, Math.round((WINDOW_SECONDS * rate) / hop));
  const window = windowHops * hop;
  const kept = Math.round((PAST_SECONDS * rate) / hop) * hop;
  const past = createSamplePast(kept);
  let hops = 0;

  const levelAt = (frequency: number, back: number): LevelReading => {
    const from = past.end - window - back * hop;
    const stretch: Stretch = [from, from + window];
    const turn = (2 * Math.PI * frequency) / rate;
    const harmonics = Math.max(1, Math.min(MOST_HARMONICS, Math.ceil(HIGHEST / frequency) - 1));
    let power = 0;
    for (let k = 1; k < harmonics; k += 2)
      power += powerOfBoth(past.samples, stretch, k * turn, (k + 1) * turn);
    if (harmonics % 2 === 1) power += powerOf(past.samples, stretch, harmonics * turn);
    return {
      time: ((hops - back) * hop - window / 2) / rate,
      level: 10 * Math.log10((2 * power) / (window * window) + NOTHING),
    };
  };

  return {
    push(samples) {
      past.push(samples);
      hops += 1;
    },
    now: (frequency) => levelAt(frequency, 0),
    whole: () => {
      const { samples, end } = past;
      let power = 0;
      for (let i = end - window; i < end; i += 1) power += (samples[i] ?? 0) * (samples[i] ?? 0);
      return 10 * Math.log10(power / window + NOTHING);
    },
    bright: () => {
      const { samples, end } = past;
      let power = 0;
      for (let i = end - window; i < end; i += 1) {
        const bend = (samples[i] ?? 0) - 2 * (samples[i - 1] ?? 0) + (samples[i - 2] ?? 0);
        power += bend * bend;
      }
      return 10 * Math.log10(power / window + NOTHING);
    },
    overtones: (frequency) => {
      const count = Math.round(OVERTONES_SECONDS * rate);
      const latest = past.samples
        .slice(past.end - count, past.end)
        .map((value, i) => value * (1 - Math.cos((2 * Math.PI * (i + 0.5)) / count)));
      const turn = (2 * Math.PI * frequency) / rate;
      const above = powerOfBoth(latest, [0, count], 2 * turn, 3 * turn);
      return 10 * Math.log10((above + NOTHING) / (powerOf(latest, [0, count], turn) + NOTHING));
    },
    past: (frequency) => {
      const last = Math.min(hops, (kept - window) / hop);
      return Array.from({ length: last }, (_, i) => levelAt(frequency, last - 1 - i));
    },
  };
};
