/** Figures of a hit that are read from spectra. */
import { decayTime, decibels, indexOfLargest, largest } from './drum-decay';
import { hann, powerSpectrum, type Spectrum, spectrogram } from './drum-spectrum';

export interface ModeFigure {
  readonly hz: number;
  /** Relative to the strongest mode. */
  readonly db: number;
  /** Milliseconds. */
  readonly t60: number | null;
}

export const OCTAVES: readonly number[] = [31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16000];
const BAND_FLOOR = -80;

const powerBetween = ({ power, binHz }: Spectrum, low: number, high: number): number => {
  let sum = 0;
  for (let i = Math.ceil(low / binHz); i < power.length && i * binHz < high; i += 1) sum += power[i] ?? 0;
  return sum;
};
const octavePower = (spectrum: Spectrum, centre: number): number =>
  powerBetween(spectrum, centre / Math.SQRT2, centre * Math.SQRT2);

/** Crest, octave levels and flatness of the first 100 ms (last 5 ms faded out). */
export const firstTenth = (samples: Float32Array, sampleRate: number, onset: number) => {
  const size = Math.round(0.1 * sampleRate);
  const fade = Math.round(0.005 * sampleRate);
  const start = Float32Array.from({ length: size }, (_, i) => samples[onset + i] ?? 0);
  const rms = Math.sqrt(start.reduce((sum, value) => sum + value * value, 0) / size);
  const window = new Float64Array(size).map((_, i) =>
    i < size - fade ? 1 : 0.5 + 0.5 * Math.cos((Math.PI * (i - size + fade)) / fade),
  );
  const spectrum = powerSpectrum(start, sampleRate, { from: 0, window, size: 0.34 });
  const total = spectrum.power.reduce((sum, value) => sum + value, 0);
  const first = Math.ceil(100 / spectrum.binHz);
  const range = spectrum.power.subarray(first, Math.floor(16000 / spectrum.binHz) + 1);
  const logs = range.reduce((sum, value) => sum + Math.log10(Math.max(value, 1e-20 * total)), 0);
  const mean = range.reduce((sum, value) => sum + value, 0) / range.length;
  return {
    crest: decibels(largest(start) / rms),
    bands: OCTAVES.map((centre) =>
      Math.max(BAND_FLOOR, 10 * Math.log10(octavePower(spectrum, centre) / total)),
    ),
    flatness: 10 * (logs / range.length - Math.log10(mean)),
  };
};

/** Octaves read together, by their indices: long windows for the low ones, short ones for the quick high ones. */
const DECAY_READINGS = [
  { octaves: [0, 1, 2], window: 0.0853, transform: 0.1706, hop: 0.004 },
  { octaves: [3, 4], window: 0.0427, transform: 0.0427, hop: 0.004 },
  { octaves: [5, 6, 7, 8, 9], window: 0.0107, transform: 0.0107, hop: 0.002 },
];
const LONGEST_DECAY_SECONDS = 4;

/** T60 of the octaves that carry enough, in ms. */
export const bandDecays = (
  samples: Float32Array,
  sampleRate: number,
  onset: number,
  bands: readonly number[],
) => {
  const decays: (number | null)[] = OCTAVES.map(() => null);
  const length = Math.min(samples.length - onset, LONGEST_DECAY_SECONDS * sampleRate);
  for (const reading of DECAY_READINGS) {
    const octaves = reading.octaves.filter((i) => (bands[i] ?? BAND_FLOOR) >= -30);
    if (octaves.length === 0) continue;
    const size = Math.round(reading.window * sampleRate);
    const hop = Math.round(reading.hop * sampleRate);
    const energies = OCTAVES.map((): number[] => []);
    const stretch = { from: onset - (size >> 1), window: hann(size), size: reading.transform };
    const steps = { hop, frames: Math.floor(length / hop) };
    spectrogram(samples, sampleRate, { ...stretch, ...steps }, (frame) => {
      for (const i of octaves) energies[i]?.push(octavePower(frame, OCTAVES[i] ?? 0));
    });
    for (const i of octaves) {
      decays[i] = decayTime(Float64Array.from(energies[i] ?? []), hop / sampleRate, 5, 25);
    }
  }
  return decays;
};

/** Magnitude-weighted mean frequencies. */
export const centroids = (samples: Float32Array, sampleRate: number, onset: number): (number | null)[] =>
  [
    { at: 0.01, window: 0.02 },
    { at: 0.05, window: 0.06 },
    { at: 0.2, window: 0.1 },
  ].map(({ at, window }) => {
    const size = Math.round(window * sampleRate);
    const from = onset + Math.round(at * sampleRate) - (size >> 1);
    const { power, binHz } = powerSpectrum(samples, sampleRate, { from, window: hann(size), size: 0.34 });
    if (largest(power) < 1e-14) return null;
    const first = Math.ceil(20 / binHz);
    const range = power.subarray(first, Math.floor(16000 / binHz) + 1);
    const floor = largest(range) * 1e-6;
    let weighted = 0;
    let sum = 0;
    range.forEach((value, i) => {
      if (value < floor) return;
      weighted += Math.sqrt(value) * (first + i) * binHz;
      sum += Math.sqrt(value);
    });
    return weighted / sum;
  });

/** Frequency of a peak at bin `i`, refined by a parabola through the logarithms. */
const refined = ({ power, binHz }: Spectrum, i: number): number => {
  const [left, centre, right] = [-1, 0, 1].map((o) => Math.log(Math.max(power[i + o] ?? 0, 1e-30)) / 2);
  if (left === undefined || centre === undefined || right === undefined) return i * binHz;
  const curve = left - 2 * centre + right;
  const shift = curve < 0 ? (0.5 * (left - right)) / curve : 0;
  return (i + Math.min(Math.max(shift, -0.5), 0.5)) * binHz;
};

const strongestPeaks = ({ power, binHz }: Spectrum): number[] => {
  const isPeak = (i: number): boolean =>
    (power[i] ?? 0) > (power[i - 1] ?? 0) && (power[i] ?? 0) >= (power[i + 1] ?? 0);
  const peaks: number[] = [];
  for (let i = Math.floor(30 / binHz); i < Math.floor(14000 / binHz); i += 1) if (isPeak(i)) peaks.push(i);
  peaks.sort((a, b) => (power[b] ?? 0) - (power[a] ?? 0));
  const chosen: number[] = [];
  for (const i of peaks) {
    if ((power[i] ?? 0) < (power[peaks[0] ?? 0] ?? 0) * 1e-3 || chosen.length === 6) break;
    if (chosen.every((j) => Math.abs(Math.log2(i / j)) > 1 / 12)) chosen.push(i);
  }
  return chosen;
};

/** Energy of one partial over time: short frames turned down to 0 Hz. */
const partialDecay = (samples: Float32Array, sampleRate: number, onset: number, hz: number) => {
  const hop = Math.round(0.002 * sampleRate);
  const size = Math.round(Math.min(Math.max(8 / hz, 0.02), 0.08) * sampleRate);
  const window = hann(size);
  const cosine = window.map((value, i) => value * Math.cos((2 * Math.PI * hz * i) / sampleRate));
  const sine = window.map((value, i) => value * Math.sin((2 * Math.PI * hz * i) / sampleRate));
  const frames = Math.min(Math.floor((samples.length - onset) / hop), Math.floor((2 * sampleRate) / hop));
  const energy = Float64Array.from({ length: frames }, (_, frame) => {
    const from = onset - (size >> 1) + frame * hop;
    let re = 0;
    let im = 0;
    for (let i = Math.max(0, -from); i < size && from + i < samples.length; i += 1) {
      const value = samples[from + i] ?? 0;
      re += value * (cosine[i] ?? 0);
      im += value * (sine[i] ?? 0);
    }
    return re * re + im * im;
  });
  return decayTime(energy, hop / sampleRate, 3, 23);
};

/** Spectral peaks of the first 350 ms, and how much energy lies near them. */
export const modeFigures = (samples: Float32Array, sampleRate: number, onset: number) => {
  const size = Math.round(0.35 * sampleRate);
  const window = new Float64Array(size).map((_, i) => 0.5 + 0.5 * Math.cos((Math.PI * i) / size));
  const spectrum = powerSpectrum(samples, sampleRate, { from: onset, window, size: 1.3 });
  const peaks = strongestPeaks(spectrum);
  const top = spectrum.power[peaks[0] ?? 0] ?? 0;
  const hz = peaks.map((i) => refined(spectrum, i));
  let tonal = 0;
  let rest = 0;
  for (let i = Math.ceil(20 / spectrum.binHz); i * spectrum.binHz <= 16000; i += 1) {
    const near = hz.some((peak) => Math.abs(i * spectrum.binHz - peak) <= Math.max(12, 0.03 * peak));
    if (near) tonal += spectrum.power[i] ?? 0;
    else rest += spectrum.power[i] ?? 0;
  }
  return {
    modes: peaks.map((i, n) => ({
      hz: hz[n] ?? 0,
      db: 10 * Math.log10((spectrum.power[i] ?? 0) / top),
      t60: partialDecay(samples, sampleRate, onset, hz[n] ?? 0),
    })),
    tonalToNoise: 10 * Math.log10(tonal / Math.max(rest, 1e-20)),
  };
};

/** Strongest low frequencies over time. */
export const bodyFigures = (samples: Float32Array, sampleRate: number, onset: number) =>
  [0.02, 0.05, 0.1, 0.2].map((at) => {
    const size = Math.round(0.04 * sampleRate);
    const from = onset + Math.round(at * sampleRate) - (size >> 1);
    const spectrum = powerSpectrum(samples, sampleRate, { from, window: hann(size), size: 0.34 });
    const first = Math.floor(25 / spectrum.binHz);
    const range = spectrum.power.subarray(first, Math.floor(1000 / spectrum.binHz) + 1);
    const top = indexOfLargest(Float64Array.from(range));
    const heard = (range[top] ?? 0) > Math.max(1e-14, 0.01 * largest(spectrum.power));
    return heard ? refined(spectrum, first + top) : null;
  });
