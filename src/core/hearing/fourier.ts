/** Power spectra of real sound, of one size. */
export interface Fourier {
  /** Bins from 0 to half the rate; fills `power` with the squared magnitudes of the windowed samples. */
  power(samples: Float64Array, power: Float64Array): void;
}

const reversed = (size: number): Uint32Array => {
  const order = new Uint32Array(size);
  for (let i = 1; i < size; i += 1) order[i] = (order[i >> 1] >> 1) | (i & 1 ? size >> 1 : 0);
  return order;
};

/**
 * A radix-2 transform (J. Cooley and J. Tukey, 1965) under a raised-cosine window.
 * Throws RangeError unless the size is a power of two.
 */
export const createFourier = (size: number): Fourier => {
  if (size < 2 || (size & (size - 1)) !== 0)
    throw new RangeError(`A transform needs a power of two, got ${size}`);
  const order = reversed(size);
  const window = Float64Array.from(
    { length: size },
    (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / size),
  );
  const cosines = Float64Array.from({ length: size / 2 }, (_, i) => Math.cos((2 * Math.PI * i) / size));
  const sines = Float64Array.from({ length: size / 2 }, (_, i) => -Math.sin((2 * Math.PI * i) / size));
  const re = new Float64Array(size);
  const im = new Float64Array(size);

  const pass = (half: number): void => {
    const stride = size / 2 / half;
    for (let start = 0; start < size; start += 2 * half) {
      for (let k = 0; k < half; k += 1) {
        const [a, b] = [start + k, start + k + half];
        const [c, s] = [cosines[k * stride], sines[k * stride]];
        const x = re[b] * c - im[b] * s;
        const y = re[b] * s + im[b] * c;
        re[b] = re[a] - x;
        im[b] = im[a] - y;
        re[a] += x;
        im[a] += y;
      }
    }
  };

  return {
    power(samples, power) {
      for (let i = 0; i < size; i += 1) re[order[i]] = samples[i] * window[i];
      im.fill(0);
      for (let half = 1; half < size; half <<= 1) pass(half);
      for (let i = 0; i < power.length; i += 1) power[i] = re[i] * re[i] + im[i] * im[i];
    },
  };
};
