/** Power spectra for measuring drum hits. */

/** `power[i]` belongs to `i * binHz`; a sine of amplitude A reads A² at its frequency. */
export interface Spectrum {
  readonly power: Float64Array;
  readonly binHz: number;
}

/** A stretch of samples: where it starts, its window, and the least transform length in seconds. */
interface Stretch {
  readonly from: number;
  readonly window: Float64Array;
  readonly size: number;
}

/** Turning factors of one pass, side by side so that the processor reads them in order. */
interface Turns {
  readonly cosine: Float64Array;
  readonly sine: Float64Array;
}

const passes = new Map<number, Turns>();
const turnsOf = (half: number): Turns => {
  const known = passes.get(half);
  if (known) return known;
  const made = {
    cosine: Float64Array.from({ length: half }, (_, k) => Math.cos((Math.PI * k) / half)),
    sine: Float64Array.from({ length: half }, (_, k) => -Math.sin((Math.PI * k) / half)),
  };
  passes.set(half, made);
  return made;
};

const bitReverse = (values: Float64Array): void => {
  for (let i = 1, j = 0; i < values.length; i += 1) {
    let bit = values.length >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      const value = values[i] as number;
      values[i] = values[j] as number;
      values[j] = value;
    }
  }
};

const pass = (re: Float64Array, im: Float64Array, half: number): void => {
  const { cosine, sine } = turnsOf(half);
  for (let start = 0; start < re.length; start += 2 * half) {
    for (let k = 0; k < half; k += 1) {
      const a = start + k;
      const b = a + half;
      const c = cosine[k] as number;
      const s = sine[k] as number;
      const x = (re[b] as number) * c - (im[b] as number) * s;
      const y = (re[b] as number) * s + (im[b] as number) * c;
      re[b] = (re[a] as number) - x;
      im[b] = (im[a] as number) - y;
      re[a] = (re[a] as number) + x;
      im[a] = (im[a] as number) + y;
    }
  }
};

/** Radix-2 Fourier transform in place. Lengths must be the same power of two. */
export const transform = (re: Float64Array, im: Float64Array): void => {
  bitReverse(re);
  bitReverse(im);
  for (let half = 1; half < re.length; half <<= 1) pass(re, im, half);
};

/** A raised-cosine window without zero ends. */
export const hann = (size: number): Float64Array =>
  new Float64Array(size).map((_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / size));

const load = (target: Float64Array, samples: Float32Array, from: number, window: Float64Array): void => {
  target.fill(0);
  const end = Math.min(window.length, samples.length - from);
  for (let i = Math.max(0, -from); i < end; i += 1)
    target[i] = (samples[from + i] as number) * (window[i] as number);
};

const transformLength = (seconds: number, sampleRate: number): number =>
  2 ** Math.ceil(Math.log2(Math.round(seconds * sampleRate)));

/** The power spectrum of one stretch. */
export const powerSpectrum = (samples: Float32Array, sampleRate: number, stretch: Stretch): Spectrum => {
  const length = transformLength(stretch.size, sampleRate);
  const re = new Float64Array(length);
  const im = new Float64Array(length);
  load(re, samples, stretch.from, stretch.window);
  transform(re, im);
  const scale = (2 / stretch.window.reduce((sum, value) => sum + value, 0)) ** 2;
  const power = new Float64Array(length / 2 + 1).map(
    (_, i) => scale * ((re[i] ?? 0) ** 2 + (im[i] ?? 0) ** 2),
  );
  return { power, binHz: sampleRate / length };
};

/** Parts the transform of two real frames, taken as real and imaginary part, into their two power spectra. */
const partPair = (re: Float64Array, im: Float64Array): readonly [Float64Array, Float64Array] => {
  const length = re.length;
  const first = new Float64Array(length / 2 + 1);
  const second = new Float64Array(length / 2 + 1);
  for (let i = 0; i <= length / 2; i += 1) {
    const j = (length - i) % length;
    const evenRe = (re[i] as number) + (re[j] as number);
    const oddIm = (im[i] as number) - (im[j] as number);
    const evenIm = (im[i] as number) + (im[j] as number);
    const oddRe = (re[j] as number) - (re[i] as number);
    first[i] = (evenRe * evenRe + oddIm * oddIm) / 4;
    second[i] = (evenIm * evenIm + oddRe * oddRe) / 4;
  }
  return [first, second];
};

/** Spectra of `frames` frames every `hop` samples, unscaled. */
export const spectrogram = (
  samples: Float32Array,
  sampleRate: number,
  { from, window, size, hop, frames }: Stretch & { readonly hop: number; readonly frames: number },
  take: (spectrum: Spectrum) => void,
): void => {
  const length = transformLength(size, sampleRate);
  const binHz = sampleRate / length;
  const re = new Float64Array(length);
  const im = new Float64Array(length);
  for (let frame = 0; frame < frames; frame += 2) {
    load(re, samples, from + frame * hop, window);
    load(im, samples, from + (frame + 1) * hop, window);
    transform(re, im);
    const [first, second] = partPair(re, im);
    take({ power: first, binHz });
    if (frame + 1 < frames) take({ power: second, binHz });
  }
};
