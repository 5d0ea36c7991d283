/**
 * Figures of a single drum hit, for comparing computed hits with measured ones.
 * A hit starts at its onset: the first sample within 40 dB of the peak. Envelopes are RMS (5 ms for the attack,
 * 10 ms for decays); decay times come from straight lines on the backward-integrated energy.
 */
import { decayTime, decibels, indexOfLargest, largest } from './drum-decay';
import { loudnessOf } from './drum-loudness';
import {
  bandDecays,
  bodyFigures,
  centroids,
  firstTenth,
  type ModeFigure,
  modeFigures,
} from './drum-tone-figures';

/** Times in milliseconds, levels in dB, frequencies in Hz; `null` where the hit gives no reading. */
export interface HitFigures {
  readonly attack: number;
  readonly timeToPeak: number;
  readonly t20: number | null;
  readonly t60: number | null;
  readonly t60Early: number | null;
  readonly t60Late: number | null;
  /** Peak over RMS of the first 100 ms. */
  readonly crest: number;
  /** Energy of the octaves 31.5 … 16k in the first 100 ms, re their total. */
  readonly bands: readonly number[];
  /** T60 of the octaves that carry at least −30 dB. */
  readonly bandT60: readonly (number | null)[];
  /** Magnitude-weighted mean frequency at 10, 50 and 200 ms. */
  readonly centroid: readonly (number | null)[];
  /** Geometric over arithmetic mean power, 100 Hz–16 kHz. */
  readonly flatness: number;
  /** Energy near the modes over the rest. */
  readonly tonalToNoise: number;
  /** Up to six spectral peaks, strongest first. */
  readonly modes: readonly ModeFigure[];
  /** Strongest frequency of 25–1000 Hz at 20, 50, 100 and 200 ms. */
  readonly body: readonly (number | null)[];
  /** LUFS. */
  readonly loudness: number;
}

/** Index of the first sample within 40 dB of the peak. */
export const onsetOf = (samples: Float32Array): number => {
  const threshold = largest(samples) / 100;
  return Math.max(
    0,
    samples.findIndex((value) => Math.abs(value) > threshold),
  );
};

/** RMS over `window` seconds, read every `hop` seconds for `length` seconds, centred on the reading. */
const envelope = (
  samples: Float32Array,
  sampleRate: number,
  { from, window, hop, length }: { from: number; window: number; hop: number; length: number },
): Float64Array => {
  const size = Math.round(window * sampleRate);
  const sums = new Float64Array(samples.length + 1);
  samples.forEach((value, i) => {
    sums[i + 1] = (sums[i] ?? 0) + value * value;
  });
  const at = (index: number): number => sums[Math.min(Math.max(index, 0), samples.length)] ?? 0;
  return Float64Array.from({ length: Math.max(0, Math.floor(length / hop + 1e-9) + 1) }, (_, i) => {
    const start = Math.round(from + i * hop * sampleRate) - (size >> 1);
    return Math.sqrt(Math.max(at(start + size) - at(start), 0) / size);
  });
};

const attackFigures = (samples: Float32Array, sampleRate: number, onset: number, length: number) => {
  const hop = 0.0005;
  const rms = envelope(samples, sampleRate, {
    from: onset - Math.round(0.01 * sampleRate),
    window: 0.005,
    hop,
    length: length + 0.01,
  });
  const crossing = (level: number): number => {
    const i = rms.findIndex((value) => value >= level);
    if (i <= 0) return 0;
    const before = rms[i - 1] ?? 0;
    return i - 1 + (level - before) / ((rms[i] ?? 0) - before);
  };
  const early = largest(rms.subarray(0, Math.floor(Math.min(length, 0.5) / hop) + 20));
  return {
    attack: (crossing(0.9 * early) - crossing(0.1 * early)) * hop * 1000,
    timeToPeak: crossing(10 ** (-0.5 / 20) * largest(rms)) * hop * 1000 - 10,
  };
};

const decayFigures = (samples: Float32Array, sampleRate: number, onset: number, length: number) => {
  const hop = 0.001;
  const rms = envelope(samples, sampleRate, {
    from: onset,
    window: 0.01,
    hop,
    length: Math.min(length, 9) - 0.02,
  });
  const peakAt = indexOfLargest(rms);
  const levels = rms.map((value) => decibels(value / (rms[peakAt] ?? 1)));
  const low = levels.findIndex((level, i) => i > peakAt && level <= -20);
  const before = levels[low - 1] ?? 0;
  const last = levels.findLastIndex((level) => level > -60);
  const energy = rms.map((value) => value * value);
  return {
    t20: low < 0 ? null : low - 1 + (before + 20) / (before - (levels[low] ?? 0)) - peakAt,
    t60: last < levels.length - 1 ? last - peakAt : null,
    t60Early: decayTime(energy, hop, 1, 18),
    t60Late: decayTime(energy, hop, 25, 50),
  };
};

/** Measures one hit. */
export const measureHit = (samples: Float32Array, sampleRate: number): HitFigures => {
  const onset = onsetOf(samples);
  const length = (samples.length - onset) / sampleRate;
  const start = firstTenth(samples, sampleRate, onset);
  return {
    ...attackFigures(samples, sampleRate, onset, Math.min(1, length)),
    ...decayFigures(samples, sampleRate, onset, length),
    ...start,
    bandT60: bandDecays(samples, sampleRate, onset, start.bands),
    centroid: centroids(samples, sampleRate, onset),
    ...modeFigures(samples, sampleRate, onset),
    body: bodyFigures(samples, sampleRate, onset),
    loudness: loudnessOf(samples, sampleRate),
  };
};
