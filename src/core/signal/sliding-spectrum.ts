import FFT from 'fft.js';

/** The power spectrum of the latest window, up to where reeds are told apart. */
export interface SlidingSpectrum {
  /** Takes the next samples in. */
  push(samples: Float64Array): void;
  /** The spectrum now; overwritten by the next call. Entry i belongs to `i * binHz`. */
  power(): Float64Array;
  readonly binHz: number;
}

/** 85 ms at 24 kHz: neighbouring reeds of a low harp are some 50 Hz apart, four bins. */
const SIZE = 2048;
/** Above this breath and cymbals are louder than what tells reeds apart. Below, rooms and mains hum. Hz. */
const BAND = { from: 90, to: 5600 } as const;

/**
 * Each bin takes in its neighbours within one bin and so much of its frequency, the nearer the more: breath moves the
 * pitch of a reed by some cents, which its high partials must not miss by.
 */
const SMEAR = 0.005;

/** Length of the window in samples. */
export const SPECTRUM_SAMPLES = SIZE;

const smear = (power: Float64Array, into: Float64Array): void => {
  for (let i = 0; i < power.length; i += 1) {
    const reach = 1 + SMEAR * i;
    const last = Math.min(power.length - 1, Math.floor(i + reach));
    let sum = 0;
    for (let j = Math.max(0, Math.ceil(i - reach)); j <= last; j += 1) {
      sum += (power[j] ?? 0) * (1 - Math.abs(i - j) / (reach + 1));
    }
    into[i] = sum;
  }
};

/** A spectrum of one stream. @param rate samples a second. */
export const createSlidingSpectrum = (rate: number): SlidingSpectrum => {
  const fft = new FFT(SIZE);
  const spectrum = fft.createComplexArray();
  const windowed = new Float64Array(SIZE);
  const window = windowed.map((_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / SIZE));
  const binHz = rate / SIZE;
  const past = new Float64Array(SIZE);
  const sharp = new Float64Array(Math.ceil(BAND.to / binHz));
  const power = new Float64Array(sharp.length);
  return {
    binHz,
    push(samples) {
      past.copyWithin(0, samples.length);
      past.set(samples, SIZE - samples.length);
    },
    power: () => {
      for (let i = 0; i < SIZE; i += 1) windowed[i] = (past[i] ?? 0) * (window[i] ?? 0);
      fft.realTransform(spectrum, windowed);
      for (let i = Math.ceil(BAND.from / binHz); i < sharp.length; i += 1) {
        sharp[i] = (spectrum[2 * i] ?? 0) ** 2 + (spectrum[2 * i + 1] ?? 0) ** 2;
      }
      smear(sharp, power);
      return power;
    },
  };
};
