/**
 * Figures of one pitched note, for comparing computed notes with measured ones.
 * A note starts at its onset, the first sample within 40 dB of the peak. The attack is read from a 5 ms RMS envelope,
 * decays from a 50 ms one. Spectra use raised-cosine windows centred on the time they are named after.
 */
import { hann, powerSpectrum, type Spectrum } from './drum-spectrum';
import { kWeighted } from './loudness';

/** Times in milliseconds, levels in dB, frequencies in Hz; `null` where the note gives no reading. */
export interface NoteFigures {
  /** From 10 to 90 % of the maximum of the first 500 ms, and until 0.5 dB under the maximum of the first second. */
  readonly attack: number;
  readonly timeToPeak: number;
  /** Level 500 ms after the onset re the peak, and slope of the first 500 ms after the peak in dB per second. */
  readonly sustain500: number | null;
  readonly decayEarly: number | null;
  /** From the peak to 20 dB under it; time for 60 dB at the slope from 0.8 s after the peak on. */
  readonly t20: number | null;
  readonly t60Late: number | null;
  /** Magnitude-weighted mean frequency at 10, 50, 200 and 500 ms. */
  readonly centroid: readonly (number | null)[];
  /** Harmonics 1–16 at 100 and 500 ms, re the strongest at 100 ms. */
  readonly harmonics100: readonly (number | null)[];
  readonly harmonics500: readonly (number | null)[];
  /** Energy at the partials over the rest, 50–550 ms. */
  readonly hnr: number;
  /** Highest frequencies within 20 and 40 dB of the strongest at 100 ms. */
  readonly bandwidth20: number;
  readonly bandwidth40: number;
  /** Maximum momentary loudness, LUFS. */
  readonly loudness: number;
  /** Frequency of the first partial, and B of f(k) = k f sqrt(1 + B k²) from partials 1–10. */
  readonly pitch: number;
  readonly inharmonicity: number;
}

const decibels = (amplitude: number): number => 20 * Math.log10(Math.max(amplitude, 1e-12));
const at = (list: ArrayLike<number>, index: number): number => list[index] ?? 0;

const indexOfLargest = (list: ArrayLike<number>, from: number, to: number): number => {
  let best = from;
  for (let i = from + 1; i < to; i += 1) if (at(list, i) > at(list, best)) best = i;
  return best;
};

/** Index of the first sample within 40 dB of the peak. */
const onsetOf = (samples: Float32Array): number => {
  const most = samples.reduce((peak, value) => Math.max(peak, Math.abs(value)), 0);
  return Math.max(
    0,
    samples.findIndex((value) => Math.abs(value) > most / 100),
  );
};

interface Envelope {
  readonly values: Float64Array;
  /** Seconds between readings. */
  readonly hop: number;
}

/** RMS over `window` seconds, read every `hop` seconds from `from` (samples) on, for `length` seconds. */
const envelopeOf = (
  samples: Float32Array,
  sampleRate: number,
  { from, window, hop, length }: { from: number; window: number; hop: number; length: number },
): Envelope => {
  const sums = new Float64Array(samples.length + 1);
  for (let i = 0; i < samples.length; i += 1) sums[i + 1] = at(sums, i) + at(samples, i) ** 2;
  const size = Math.round(window * sampleRate);
  const inside = (index: number): number => Math.min(Math.max(index, 0), samples.length);
  const values = new Float64Array(Math.max(0, Math.floor(length / hop) + 1)).map((_, i) => {
    const start = Math.round(from + i * hop * sampleRate) - (size >> 1);
    const energy = at(sums, inside(start + size)) - at(sums, inside(start));
    return Math.sqrt(Math.max(energy, 0) / size);
  });
  return { values, hop };
};

/** Fractional index at which a rising envelope first reaches a level. */
const firstAt = (values: Float64Array, level: number): number => {
  const i = values.findIndex((value) => value >= level);
  return i <= 0 ? 0 : i - 1 + (level - at(values, i - 1)) / (at(values, i) - at(values, i - 1));
};

const attackFigures = (samples: Float32Array, sampleRate: number, onset: number) => {
  const lead = 0.01;
  const { values, hop } = envelopeOf(samples, sampleRate, {
    from: onset - Math.round(lead * sampleRate),
    window: 0.005,
    hop: 0.0005,
    length: 1 + lead,
  });
  const half = at(values, indexOfLargest(values, 0, Math.floor((0.5 + lead) / hop)));
  const whole = at(values, indexOfLargest(values, 0, values.length));
  return {
    attack: (firstAt(values, 0.9 * half) - firstAt(values, 0.1 * half)) * hop * 1000,
    timeToPeak: (firstAt(values, whole * 10 ** (-0.5 / 20)) * hop - lead) * 1000,
  };
};

/** Least-squares slope of readings `from` … `to`, per second. */
const slopeOf = (values: Float64Array, from: number, to: number, hop: number): number => {
  const count = to - from + 1;
  const middle = (count - 1) / 2;
  let [above, below] = [0, 0];
  for (let i = 0; i < count; i += 1) {
    above += (i - middle) * at(values, from + i);
    below += (i - middle) ** 2;
  }
  return above / below / hop;
};

const decayFigures = (samples: Float32Array, sampleRate: number, onset: number) => {
  const hop = 0.005;
  const length = (samples.length - onset) / sampleRate - 0.03;
  const levels = envelopeOf(samples, sampleRate, { from: onset, window: 0.05, hop, length }).values.map(
    decibels,
  );
  const peak = indexOfLargest(levels, 0, levels.length);
  const most = at(levels, peak);
  const below = (drop: number): number => levels.findIndex((level, i) => i > peak && level <= most - drop);
  const twenty = below(20);
  const sixty = below(60);
  const earlyEnd = Math.min(peak + 100, twenty < 0 ? levels.length - 1 : twenty);
  const lateEnd = sixty < 0 ? levels.length - 1 : sixty;
  const late = lateEnd - peak > 260 ? slopeOf(levels, peak + 160, lateEnd, hop) : 0;
  return {
    sustain500: levels.length > 100 ? at(levels, 100) - most : null,
    decayEarly: earlyEnd - peak >= 4 ? slopeOf(levels, peak, earlyEnd, hop) : null,
    t20: twenty < 0 ? null : (twenty - peak) * hop * 1000,
    t60Late: late < -1 ? -60000 / late : null,
  };
};

interface Reading {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  readonly onset: number;
}

/** Spectrum of a window of `seconds` centred `time` seconds after the onset, transformed over at least `size` seconds. */
const spectrumAt = (
  { samples, sampleRate, onset }: Reading,
  time: number,
  seconds: number,
  size: number,
): Spectrum => {
  const window = hann(Math.round(seconds * sampleRate));
  const from = onset + Math.round(time * sampleRate) - (window.length >> 1);
  return powerSpectrum(samples, sampleRate, { from, window, size });
};

/** Mean frequency by magnitude of the bins from 20 Hz to 16 kHz within 60 dB of the strongest. */
const centroidAt = (reading: Reading, time: number): number | null => {
  const width = time < 0.03 ? 0.02 : time < 0.1 ? 0.06 : 0.1;
  const { power, binHz } = spectrumAt(reading, time, width, 0.34);
  const first = Math.ceil(20 / binHz);
  const last = Math.min(Math.floor(16000 / binHz), power.length - 1);
  const least = at(power, indexOfLargest(power, first, last + 1)) * 1e-6;
  if (least < 1e-20) return null;
  let [sum, weighted] = [0, 0];
  for (let i = first; i <= last; i += 1) {
    if (at(power, i) < least) continue;
    const magnitude = Math.sqrt(at(power, i));
    sum += magnitude;
    weighted += magnitude * i * binHz;
  }
  return weighted / sum;
};

/** The peak of a spectrum between two frequencies, refined by a parabola through the logarithms. */
const peakBetween = ({ power, binHz }: Spectrum, low: number, high: number) => {
  const i = indexOfLargest(power, Math.max(1, Math.floor(low / binHz)), Math.ceil(high / binHz) + 1);
  const [l, c, r] = [i - 1, i, i + 1].map((bin) => Math.log(Math.max(at(power, bin), 1e-30)));
  const bend = (l ?? 0) - 2 * (c ?? 0) + (r ?? 0);
  const offset = bend < 0 ? (0.5 * ((l ?? 0) - (r ?? 0))) / bend : 0;
  return { hz: (i + Math.min(0.5, Math.max(-0.5, offset))) * binHz, power: at(power, i) };
};

/** First partial and B, each further partial looked for where those before it say. */
const seriesOf = (reading: Reading, f0: number) => {
  const spectrum = spectrumAt(reading, 0.3, 0.5, 1.3);
  const strongest = at(spectrum.power, indexOfLargest(spectrum.power, 0, spectrum.power.length));
  const found: { readonly square: number; readonly ratio: number; readonly weight: number }[] = [];
  let b = 0;
  for (let k = 1; k <= 10 && k * f0 < 0.4 * reading.sampleRate; k += 1) {
    const guess = k * f0 * Math.sqrt((1 + b * k * k) / (1 + b));
    const { hz, power } = peakBetween(spectrum, guess - 0.12 * f0, guess + 0.12 * f0);
    if (power < strongest * 1e-5) continue;
    found.push({ square: k * k, ratio: (hz / (k * f0)) ** 2, weight: Math.sqrt(power) });
    if (found.length < 3) continue;
    const total = found.reduce((sum, { weight }) => sum + weight, 0);
    const meanSquare = found.reduce((sum, { square, weight }) => sum + square * weight, 0) / total;
    const meanRatio = found.reduce((sum, { ratio, weight }) => sum + ratio * weight, 0) / total;
    const above = found.reduce(
      (s, { square, ratio, weight }) => s + weight * (square - meanSquare) * (ratio - meanRatio),
      0,
    );
    const below = found.reduce((s, { square, weight }) => s + weight * (square - meanSquare) ** 2, 0);
    const slope = above / below;
    b = Math.max(0, slope / (meanRatio - slope * meanSquare));
  }
  return { pitch: peakBetween(spectrum, 0.9 * f0, 1.1 * f0).hz, inharmonicity: b, spectrum };
};

const partial = (k: number, pitch: number, b: number): number =>
  k * pitch * Math.sqrt((1 + b * k * k) / (1 + b));

/** Power of harmonics 1–16; null above the hearing range. */
const harmonicsAt = (reading: Reading, time: number, pitch: number, b: number) => {
  const spectrum = spectrumAt(reading, time, Math.max(0.1, 6 / pitch), 0.68);
  const powers = Array.from({ length: 16 }, (_, i) => {
    const hz = partial(i + 1, pitch, b);
    return hz > 20000 ? null : peakBetween(spectrum, hz - 0.25 * pitch, hz + 0.25 * pitch).power;
  });
  return { spectrum, powers };
};

/** Energy within a few Hz of the partials over the rest from half the fundamental to 16 kHz. */
const harmonicsToNoise = ({ power, binHz }: Spectrum, pitch: number, b: number): number => {
  const first = Math.ceil((0.5 * pitch) / binHz);
  const last = Math.floor(16000 / binHz);
  const tonal = new Uint8Array(last + 1);
  for (let k = 1; partial(k, pitch, b) < 16000 + pitch; k += 1) {
    const hz = partial(k, pitch, b);
    const width = Math.min(0.25 * pitch, 8 + 0.006 * hz);
    for (let i = Math.ceil((hz - width) / binHz); i <= Math.min(last, (hz + width) / binHz); i += 1)
      tonal[i] = 1;
  }
  let [all, rest, count] = [0, 0, 0];
  for (let i = first; i <= last; i += 1) {
    all += at(power, i);
    if (tonal[i] === 1) continue;
    rest += at(power, i);
    count += 1;
  }
  const noise = (rest * (last - first + 1)) / Math.max(1, count);
  return 10 * Math.log10(Math.max(all - noise, 0.001 * all) / Math.max(noise, 1e-20));
};

const bandwidthOf = ({ power, binHz }: Spectrum, drop: number): number => {
  const least = at(power, indexOfLargest(power, 0, power.length)) * 10 ** (-drop / 10);
  return power.findLastIndex((value) => value >= least) * binHz;
};

/** Maximum loudness over 400 ms, read every 10 ms, LUFS. */
export const momentaryLoudness = (samples: Float32Array, sampleRate: number): number => {
  const { values } = envelopeOf(Float32Array.from(kWeighted(samples, sampleRate)), sampleRate, {
    from: 0,
    window: 0.4,
    hop: 0.01,
    length: samples.length / sampleRate,
  });
  return -0.691 + decibels(at(values, indexOfLargest(values, 0, values.length)));
};

/** Milliseconds from the end of a note held `held` seconds to 20 dB under its level 30 ms before; null when never. */
export const release20 = (samples: Float32Array, sampleRate: number, held: number): number | null => {
  const hop = 0.001;
  const from = onsetOf(samples);
  const length = samples.length / sampleRate - held + 0.03;
  const start = from + Math.round((held - 0.03) * sampleRate);
  const { values } = envelopeOf(samples, sampleRate, { from: start, window: 0.05, hop, length });
  const end = values.findIndex((value) => value <= at(values, 0) / 10);
  return end < 0 ? null : end - 30;
};

/** Mean frequency of a note `time` seconds after its onset, in Hz. */
export const centroidOf = (samples: Float32Array, sampleRate: number, time: number): number | null =>
  centroidAt({ samples, sampleRate, onset: onsetOf(samples) }, time);

/** Measures a note of about `f0` Hz: for an organ with a 16' stop, half the pitch that is played. */
export const measureNote = (samples: Float32Array, sampleRate: number, f0: number): NoteFigures => {
  const reading = { samples, sampleRate, onset: onsetOf(samples) };
  const { pitch, inharmonicity, spectrum } = seriesOf(reading, f0);
  const early = harmonicsAt(reading, 0.1, pitch, inharmonicity);
  const later = harmonicsAt(reading, 0.5, pitch, inharmonicity);
  const strongest = Math.max(...early.powers.map((power) => power ?? 0));
  const relative = (power: number | null): number | null =>
    power === null ? null : Math.max(-80, 10 * Math.log10(Math.max(power, 1e-30) / strongest));
  return {
    ...attackFigures(samples, sampleRate, reading.onset),
    ...decayFigures(samples, sampleRate, reading.onset),
    centroid: [0.01, 0.05, 0.2, 0.5].map((time) => centroidAt(reading, time)),
    harmonics100: early.powers.map(relative),
    harmonics500: later.powers.map(relative),
    hnr: harmonicsToNoise(spectrum, pitch, inharmonicity),
    bandwidth20: bandwidthOf(early.spectrum, 20),
    bandwidth40: bandwidthOf(early.spectrum, 40),
    loudness: momentaryLoudness(samples, sampleRate),
    pitch,
    inharmonicity,
  };
};
