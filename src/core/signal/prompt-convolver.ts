import FFT from 'fft.js';
import type { Sides } from './stereo-convolver';

/**
 * Answers a mono signal with two impulse responses block by block, each at once, for the audio thread: short blocks answer
 * with the beginning of the responses, long ones, which cost less, with the rest (partitioned convolution after Gardner,
 * "Efficient convolution without input-output delay", J. Audio Eng. Soc. 43, 1995, with two sizes).
 */
export interface PromptConvolver {
  /** Samples of the longest block that is waited for. */
  readonly longest: number;
  /** Writes the answer to the next block, as long as it, to both sides. Nothing is allocated. */
  process(samples: Float32Array, left: Float32Array, right: Float32Array): void;
}

/** Samples of a long block; measured as the cheapest for responses of some ten thousand samples. */
const LONG = 1024;

/**
 * Creates a convolver for blocks of so many samples, which must divide 1024.
 * Throws RangeError for another block, or unless both responses are of the same length, 1 or more.
 */
export const createPromptConvolver = (responses: Sides, block: number): PromptConvolver => {
  const { length } = responses[0];
  if (!Number.isInteger(block) || block < 2 || LONG % block !== 0)
    throw new RangeError(`a block must divide ${LONG}, got ${block}`);
  if (length === 0 || responses[1].length !== length)
    throw new RangeError(`both responses must be equally long, got ${length} and ${responses[1].length}`);
  return new TwoSizes(responses, block);
};

class TwoSizes implements PromptConvolver {
  readonly longest = LONG;
  private readonly short: Level;
  private readonly long: Level | null;
  private readonly gathered = new Float32Array(LONG);
  private at = 0;

  constructor(responses: Sides, block: number) {
    const { length } = responses[0];
    this.short = new Level(responses, { from: 0, to: Math.min(length, LONG), block });
    this.long = length > LONG ? new Level(responses, { from: LONG, to: length, block: LONG }) : null;
  }

  process(samples: Float32Array, left: Float32Array, right: Float32Array): void {
    this.short.take(samples);
    this.short.write(left, right, 0);
    this.long?.add(left, right, this.at);
    this.gathered.set(samples, this.at);
    this.at = (this.at + samples.length) % LONG;
    if (this.at === 0) this.long?.take(this.gathered);
  }
}

interface Share {
  /** The part of the responses this level answers with. */
  readonly from: number;
  readonly to: number;
  readonly block: number;
}

/**
 * Blocks of one size, by overlap-save. Both sides are one transform: the left response is its real part, the right one its
 * imaginary part. All blocks of one frequency lie side by side, so that each is gone through once: what the responses have
 * there and at its mirror (four numbers a block), and what was heard (two numbers, newest first, written twice so that it
 * need not be turned round).
 */
class Level {
  private readonly block: number;
  private readonly parts: number;
  private readonly fft: FFT;
  private readonly answers: Float32Array;
  private readonly heard: Float32Array;
  private readonly window: Float64Array;
  private readonly spectrum: number[];
  private readonly product: number[];
  private readonly out: number[];
  private newest = 0;

  constructor(responses: Sides, { from, to, block }: Share) {
    this.block = block;
    this.fft = new FFT(2 * block);
    this.parts = Math.ceil((to - from) / block);
    this.answers = new Float32Array(4 * this.parts * (block + 1));
    for (let part = 0; part < this.parts; part += 1) {
      const start = from + part * block;
      this.keepAnswer(part, spectrumOf(this.fft, responses, start, Math.min(to, start + block)));
    }
    this.heard = new Float32Array(4 * this.parts * (block + 1));
    this.window = new Float64Array(2 * block);
    this.spectrum = this.fft.createComplexArray();
    this.product = this.fft.createComplexArray();
    this.out = this.fft.createComplexArray();
  }

  /** Takes the next block in and makes the answer that `write` and `add` give. */
  take(samples: Float32Array): void {
    const { block, fft, window, spectrum, parts } = this;
    window.copyWithin(0, block);
    window.set(samples, block);
    fft.realTransform(spectrum, window);
    this.newest = this.newest === 0 ? parts - 1 : this.newest - 1;
    for (let i = 0; i <= block; i += 1) this.answerAt(i);
    fft.transform(this.out, this.product);
  }

  /** Writes as much of the answer as the sides take, from one of its samples on. */
  write(left: Float32Array, right: Float32Array, from: number): void {
    left.fill(0);
    right.fill(0);
    this.add(left, right, from);
  }

  add(left: Float32Array, right: Float32Array, from: number): void {
    const { out } = this;
    // The first half of a window is what the transform has wrapped around.
    const start = 2 * (this.block + from);
    for (let i = 0; i < left.length; i += 1) {
      left[i] = (left[i] ?? 0) + (out[start + 2 * i] ?? 0);
      right[i] = (right[i] ?? 0) - (out[start + 2 * i + 1] ?? 0);
    }
  }

  private keepAnswer(part: number, spectrum: readonly number[]): void {
    for (let i = 0; i <= this.block; i += 1) {
      const at = 4 * (i * this.parts + part);
      const mirror = (spectrum.length - 2 * i) % spectrum.length;
      this.answers[at] = spectrum[2 * i] ?? 0;
      this.answers[at + 1] = spectrum[2 * i + 1] ?? 0;
      this.answers[at + 2] = spectrum[mirror] ?? 0;
      this.answers[at + 3] = spectrum[mirror + 1] ?? 0;
    }
  }

  /**
   * Sums what was heard times the responses at one frequency and at its mirror, where a real signal has the conjugate. The
   * sum is left conjugate, so that a transform forward turns it back.
   */
  private answerAt(frequency: number): void {
    const { answers, heard, parts, newest, spectrum, product } = this;
    const first = 4 * frequency * parts;
    const slot = first + 2 * newest;
    heard[slot] = heard[slot + 2 * parts] = spectrum[2 * frequency] ?? 0;
    heard[slot + 1] = heard[slot + 2 * parts + 1] = spectrum[2 * frequency + 1] ?? 0;
    let [real, imaginary, mirrorReal, mirrorImaginary] = [0, 0, 0, 0];
    for (let part = 0; part < parts; part += 1) {
      const x = heard[slot + 2 * part] ?? 0;
      const y = heard[slot + 2 * part + 1] ?? 0;
      const at = first + 4 * part;
      const a = answers[at] ?? 0;
      const b = answers[at + 1] ?? 0;
      const c = answers[at + 2] ?? 0;
      const d = answers[at + 3] ?? 0;
      real += x * a - y * b;
      imaginary += x * b + y * a;
      mirrorReal += x * c + y * d;
      mirrorImaginary += x * d - y * c;
    }
    // The lowest and the highest frequency are their own mirrors.
    const mirror = frequency === 0 ? 0 : product.length - 2 * frequency;
    product[mirror] = mirrorReal;
    product[mirror + 1] = -mirrorImaginary;
    product[2 * frequency] = real;
    product[2 * frequency + 1] = -imaginary;
  }
}

/** The spectrum of both responses from one sample to another, scaled for turning back. */
const spectrumOf = (fft: FFT, [left, right]: Sides, from: number, to: number): readonly number[] => {
  const both = fft.createComplexArray();
  const size = both.length / 2;
  for (let i = from; i < to; i += 1) {
    both[2 * (i - from)] = (left[i] ?? 0) / size;
    both[2 * (i - from) + 1] = (right[i] ?? 0) / size;
  }
  const spectrum = fft.createComplexArray();
  fft.transform(spectrum, both);
  return spectrum;
};
