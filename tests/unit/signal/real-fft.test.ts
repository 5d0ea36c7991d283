import { describe, expect, it } from 'vitest';
import { createRealFft } from '../../../src/core/signal/real-fft';
import { createRandom } from '../../../src/core/theory/random';

/** The sum by which the discrete Fourier transform is defined (any handbook of signal processing), one frequency at a time. */
const defined = (samples: Float64Array, k: number): readonly [re: number, im: number] => {
  const turn = (-2 * Math.PI * k) / samples.length;
  return [
    samples.reduce((sum, value, n) => sum + value * Math.cos(turn * n), 0),
    samples.reduce((sum, value, n) => sum + value * Math.sin(turn * n), 0),
  ];
};

describe.each([4, 8, 256])('the spectrum of %i real samples', (size) => {
  const random = createRandom(size);
  const samples = new Float64Array(size).map(() => random() - 0.5);
  const fft = createRealFft(size);
  const spectrum = new Float64Array(size + 2);
  fft.toSpectrum(samples, spectrum);

  it('is the one its definition gives, from 0 to half the rate', () => {
    for (let k = 0; k <= size / 2; k += 1) {
      const [re, im] = defined(samples, k);
      expect(spectrum[2 * k]).toBeCloseTo(re, 10);
      expect(spectrum[2 * k + 1]).toBeCloseTo(im, 10);
    }
  });

  it('turns back into the samples', () => {
    const back = new Float64Array(size);
    fft.toTime(spectrum, back);
    back.forEach((value, i) => {
      expect(value).toBeCloseTo(samples[i] ?? Number.NaN, 12);
    });
  });
});
