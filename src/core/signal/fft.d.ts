declare module 'fft.js' {
  /** Fourier transforms of a size that is a power of two; complex arrays hold real and imaginary parts in turn. */
  class FFT {
    constructor(size: number);
    createComplexArray(): number[];
    /** Fills the first half (and the middle) of the spectrum of real data. */
    realTransform(out: number[] | Float64Array, data: ArrayLike<number>): void;
    /** Complex to complex. */
    transform(out: number[] | Float64Array, data: ArrayLike<number>): void;
    completeSpectrum(spectrum: number[] | Float64Array): void;
    /** Complex to complex, divided by the size. */
    inverseTransform(out: number[] | Float64Array, spectrum: ArrayLike<number>): void;
  }
  export = FFT;
}
