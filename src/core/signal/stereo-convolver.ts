import FFT from 'fft.js';

/** One side beside the other, of equal length. */
export type Sides = readonly [left: Float32Array, right: Float32Array];

/** Answers a mono signal with two impulse responses, stretch by stretch, for whoever need not hear it at once. */
export interface StereoConvolver {
  /** Writes the answer to the next stretch to both sides, as long as it; what rings on is added to the following. */
  process(samples: Float32Array, sides: Sides): void;
}

/** Long blocks cost least: the transform is at least three times as long as the answer. */
const LEAST_LENGTHS = 3;

const sizeFor = (length: number): number => 2 ** Math.ceil(Math.log2(LEAST_LENGTHS * length + 1));

/** Samples a convolver with responses of so many takes in at a time: stretches of a multiple of these cost least. */
export const convolverBlock = (length: number): number => sizeFor(length) - length + 1;

/**
 * Creates a convolver by overlapping blocks (overlap-add). Both sides are one transform: the left response is its real
 * part and the right one its imaginary part, and so come out again, since the signal is real.
 * Throws RangeError unless both responses are of the same length, 1 or more.
 */
export const createStereoConvolver = ([left, right]: Sides): StereoConvolver => {
  const { length } = left;
  if (length === 0 || right.length !== length)
    throw new RangeError(`both responses must be equally long, got ${length} and ${right.length}`);
  const size = sizeFor(length);
  const block = convolverBlock(length);
  const fft = new FFT(size);
  const answer = answerOf(fft, [left, right]);
  const input = new Float64Array(size);
  const spectrum = fft.createComplexArray();
  const output = fft.createComplexArray();
  /** What rings on after the last block: left and right in turn. */
  const ringing = new Float64Array(2 * (length - 1));

  const transform = (samples: Float32Array): void => {
    input.fill(0);
    input.set(samples);
    fft.realTransform(spectrum, input);
    answerInto(spectrum, answer);
    // Turned back by a transform forward of the conjugate.
    fft.transform(output, spectrum);
  };
  /** Writes so many samples of the output from a place on, and keeps the rest. */
  const write = ([one, other]: Sides, at: number, count: number): void => {
    const inside = Math.min(count, length - 1);
    for (let i = 0; i < inside; i += 1) {
      one[at + i] = (output[2 * i] ?? 0) + (ringing[2 * i] ?? 0);
      other[at + i] = (ringing[2 * i + 1] ?? 0) - (output[2 * i + 1] ?? 0);
    }
    for (let i = inside; i < count; i += 1) {
      one[at + i] = output[2 * i] ?? 0;
      other[at + i] = -(output[2 * i + 1] ?? 0);
    }
    ringing.copyWithin(0, 2 * inside);
    ringing.fill(0, ringing.length - 2 * inside);
    for (let i = 0; i < ringing.length; i += 2) {
      ringing[i] = (ringing[i] ?? 0) + (output[2 * count + i] ?? 0);
      ringing[i + 1] = (ringing[i + 1] ?? 0) - (output[2 * count + i + 1] ?? 0);
    }
  };

  return {
    process: (samples, sides) => {
      for (let at = 0; at < samples.length; at += block) {
        const stretch = samples.subarray(at, at + block);
        transform(stretch);
        write(sides, at, stretch.length);
      }
    },
  };
};

/** The spectrum of both responses, such that a spectrum times it needs no further scaling when it is turned back. */
const answerOf = (fft: FFT, [left, right]: Sides): Float64Array => {
  const both = fft.createComplexArray();
  const size = both.length / 2;
  for (let i = 0; i < left.length; i += 1) {
    both[2 * i] = (left[i] ?? 0) / size;
    both[2 * i + 1] = (right[i] ?? 0) / size;
  }
  const spectrum = fft.createComplexArray();
  fft.transform(spectrum, both);
  return Float64Array.from(spectrum);
};

/**
 * Puts the conjugate of a real signal's spectrum times another in its place. Only the lower half of the signal's is read:
 * the upper half mirrors it.
 */
const answerInto = (spectrum: number[], by: Float64Array): void => {
  const { length } = by;
  for (let i = 0; i <= length / 2; i += 2) {
    const real = spectrum[i] ?? 0;
    const imaginary = spectrum[i + 1] ?? 0;
    const mirror = (length - i) % length;
    const one = by[i] ?? 0;
    const two = by[i + 1] ?? 0;
    const three = by[mirror] ?? 0;
    const four = by[mirror + 1] ?? 0;
    spectrum[i] = real * one - imaginary * two;
    spectrum[i + 1] = -(real * two + imaginary * one);
    spectrum[mirror] = real * three + imaginary * four;
    spectrum[mirror + 1] = imaginary * three - real * four;
  }
};
