import { createRealFft } from './real-fft';
import { createSamplePast } from './sample-past';

/** The spectrum of the latest window, up to where reeds are told apart. */
export interface SlidingSpectrum {
  /** Takes the next samples in. */
  push(samples: Float64Array): void;
  /** Levels of the spectrum now in dB, of any fixed zero; overwritten by the next call. Entry i belongs to `i * binHz`. */
  levels(): Float64Array;
  readonly binHz: number;
}

/** 85 ms at 24 kHz: neighbouring reeds of a low harp are some 50 Hz apart, four bins. */
const SIZE = 2048;
/** Above this breath and cymbals are louder than what tells reeds apart. Below, rooms and mains hum. Hz. */
const BAND = { from: 70, to: 5600 } as const;
/** Power of what counts as nothing. */
const NOTHING = 1e-15;

/** Length of the window in samples. */
export const SPECTRUM_SAMPLES = SIZE;

/** A spectrum of one stream under a raised cosine. @param rate samples a second. */
export const createSlidingSpectrum = (rate: number): SlidingSpectrum => {
  const fft = createRealFft(SIZE);
  const spectrum = new Float64Array(SIZE + 2);
  const windowed = new Float64Array(SIZE);
  const window = windowed.map((_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / SIZE));
  const binHz = rate / SIZE;
  const past = createSamplePast(SIZE);
  const levels = new Float64Array(Math.ceil(BAND.to / binHz)).fill(10 * Math.log10(NOTHING));
  return {
    binHz,
    push: (samples) => past.push(samples),
    levels: () => {
      const { samples, end } = past;
      for (let i = 0; i < SIZE; i += 1) windowed[i] = (samples[end - SIZE + i] ?? 0) * (window[i] ?? 0);
      fft.toSpectrum(windowed, spectrum);
      for (let i = Math.ceil(BAND.from / binHz); i < levels.length; i += 1) {
        const re = spectrum[2 * i] ?? 0;
        const im = spectrum[2 * i + 1] ?? 0;
        levels[i] = 10 * Math.log10(re * re + im * im + NOTHING);
      }
      return levels;
    },
  };
};
