/** What lies between a source of sound and the microphone: filters, rooms, distance, another clock. */
import { transform } from '../drum-spectrum';

/** A second-order section, a0 = 1. */
export interface Section {
  readonly b: readonly [number, number, number];
  readonly a: readonly [number, number];
}

/** Second-order filters of the bilinear transform ("Audio EQ Cookbook", R. Bristow-Johnson, W3C note 2021). */
export const section = (
  type: 'highpass' | 'lowpass' | 'peak',
  { hz, q, gain = 0 }: { readonly hz: number; readonly q: number; readonly gain?: number },
  sampleRate: number,
): Section => {
  const w = (2 * Math.PI * hz) / sampleRate;
  const alpha = Math.sin(w) / (2 * q);
  const c = Math.cos(w);
  const a = 10 ** (gain / 40);
  if (type === 'peak') {
    const a0 = 1 + alpha / a;
    return {
      b: [(1 + alpha * a) / a0, (-2 * c) / a0, (1 - alpha * a) / a0],
      a: [(-2 * c) / a0, (1 - alpha / a) / a0],
    };
  }
  const a0 = 1 + alpha;
  const edge = type === 'highpass' ? 1 + c : 1 - c;
  const middle = type === 'highpass' ? -edge : edge;
  return { b: [edge / 2 / a0, middle / a0, edge / 2 / a0], a: [(-2 * c) / a0, (1 - alpha) / a0] };
};

/** Passes samples through sections, one after another. */
export const filter = (samples: Float32Array, sections: readonly Section[]): Float32Array => {
  const out = samples.slice();
  for (const { b, a } of sections) {
    let [x1, x2, y1, y2] = [0, 0, 0, 0];
    for (let i = 0; i < out.length; i += 1) {
      const x = out[i];
      const y = b[0] * x + b[1] * x1 + b[2] * x2 - a[0] * y1 - a[1] * y2;
      [x2, x1, y2, y1] = [x1, x, y1, y];
      out[i] = y;
    }
  }
  return out;
};

/** The samples through an impulse response, as long as they were (overlap and add). */
export const convolve = (samples: Float32Array, impulse: Float32Array): Float32Array => {
  const size = 2 ** Math.ceil(Math.log2(2 * impulse.length));
  const step = size - impulse.length + 1;
  const spectrum = { re: new Float64Array(size), im: new Float64Array(size) };
  spectrum.re.set(impulse);
  transform(spectrum.re, spectrum.im);
  const out = new Float32Array(samples.length);
  for (let from = 0; from < samples.length; from += step) {
    const re = new Float64Array(size);
    const im = new Float64Array(size);
    re.set(samples.subarray(from, from + step));
    transform(re, im);
    for (let i = 0; i < size; i += 1) {
      const r = re[i] * spectrum.re[i] - im[i] * spectrum.im[i];
      // Conjugated, so that the same transform turns it back.
      im[i] = -(re[i] * spectrum.im[i] + im[i] * spectrum.re[i]);
      re[i] = r;
    }
    transform(re, im);
    for (let i = 0; i < size && from + i < out.length; i += 1) out[from + i] += re[i] / size;
  }
  return out;
};

/** Played by a clock that runs faster by so many parts in a million, and so many seconds late. */
export const delayed = (
  samples: Float32Array,
  { seconds, drift, sampleRate }: { seconds: number; drift: number; sampleRate: number },
): Float32Array => {
  const out = new Float32Array(samples.length);
  for (let i = 0; i < out.length; i += 1) {
    const at = (i - seconds * sampleRate) * (1 + drift * 1e-6);
    const n = Math.floor(at);
    if (n < 1 || n + 2 >= samples.length) continue;
    // Cubic between four samples (Catmull and Rom).
    const x = at - n;
    const [p, q, r, s] = [samples[n - 1], samples[n], samples[n + 1], samples[n + 2]];
    out[i] = q + 0.5 * x * (r - p + x * (2 * p - 5 * q + 4 * r - s + x * (3 * (q - r) + s - p)));
  }
  return out;
};

/** Root mean square of what is louder than −40 dB re the loudest, in pieces of 20 ms. */
export const activeLevel = (samples: Float32Array, sampleRate: number): number => {
  const size = Math.round(0.02 * sampleRate);
  const powers = Array.from({ length: Math.floor(samples.length / size) }, (_, i) => {
    let sum = 0;
    for (let n = i * size; n < (i + 1) * size; n += 1) sum += samples[n] ** 2;
    return sum / size;
  });
  const most = Math.max(...powers);
  const active = powers.filter((power) => power > most * 1e-4);
  return Math.sqrt(active.reduce((sum, power) => sum + power, 0) / Math.max(1, active.length));
};
