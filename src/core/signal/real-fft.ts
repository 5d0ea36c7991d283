import FFT from 'fft.js';

/** Fourier transforms of real samples, by complex ones of half the size. */
export interface RealFft {
  /** Fills a spectrum: real and imaginary parts in turn, from 0 to half the rate. */
  toSpectrum(samples: Float64Array, spectrum: Float64Array): void;
  /** Fills samples from a spectrum as `toSpectrum` makes it, and so undoes it. */
  toTime(spectrum: Float64Array, samples: Float64Array): void;
}

/**
 * For so many samples, a power of two, 4 or more. Samples with even places are taken for real parts and those with odd
 * ones for imaginary parts of half as many complex numbers, whose spectrum is then parted again (W. Press et al.,
 * "Numerical Recipes", ch. 12.3). Typed arrays throughout: plain ones box every number they are given.
 * Back it goes by the conjugates, as a product is cheaper than the divisions of the inverse transform.
 */
export const createRealFft = (size: number): RealFft => {
  const half = size / 2;
  const scale = 1 / half;
  const fft = new FFT(half);
  const mixed = new Float64Array(size);
  const cosines = Float64Array.from({ length: half }, (_, k) => Math.cos((2 * Math.PI * k) / size));
  const sines = Float64Array.from({ length: half }, (_, k) => -Math.sin((2 * Math.PI * k) / size));
  return {
    toSpectrum(samples, spectrum) {
      fft.transform(mixed, samples);
      const sum = mixed[0] ?? 0;
      const difference = mixed[1] ?? 0;
      spectrum[0] = sum + difference;
      spectrum[1] = 0;
      spectrum[size] = sum - difference;
      spectrum[size + 1] = 0;
      for (let k = 1; k < half; k += 1) {
        const j = half - k;
        const a = mixed[2 * k] ?? 0;
        const b = mixed[2 * k + 1] ?? 0;
        const c = mixed[2 * j] ?? 0;
        const d = mixed[2 * j + 1] ?? 0;
        const evenRe = (a + c) / 2;
        const evenIm = (b - d) / 2;
        const oddRe = (b + d) / 2;
        const oddIm = (c - a) / 2;
        const cos = cosines[k] ?? 0;
        const sin = sines[k] ?? 0;
        spectrum[2 * k] = evenRe + oddRe * cos - oddIm * sin;
        spectrum[2 * k + 1] = evenIm + oddRe * sin + oddIm * cos;
      }
    },
    toTime(spectrum, samples) {
      for (let k = 0; k < half; k += 1) {
        const j = half - k;
        const a = spectrum[2 * k] ?? 0;
        const b = spectrum[2 * k + 1] ?? 0;
        const c = spectrum[2 * j] ?? 0;
        const d = -(spectrum[2 * j + 1] ?? 0);
        const evenRe = (a + c) / 2;
        const evenIm = (b + d) / 2;
        const re = (a - c) / 2;
        const im = (b - d) / 2;
        const cos = cosines[k] ?? 0;
        const sin = -(sines[k] ?? 0);
        const oddRe = re * cos - im * sin;
        const oddIm = re * sin + im * cos;
        mixed[2 * k] = evenRe - oddIm;
        mixed[2 * k + 1] = -(evenIm + oddRe);
      }
      fft.transform(samples, mixed);
      for (let i = 0; i < size; i += 2) {
        samples[i] = scale * (samples[i] ?? 0);
        samples[i + 1] = -scale * (samples[i + 1] ?? 0);
      }
    },
  };
};
