/** Reading rendered sound in tests. */

/** 32-bit floats from base64, as the page with the band sends them. */
export const floatsFrom = (base64: string): Float32Array => {
  const bytes = Buffer.from(base64, 'base64');
  return new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
};

/** First frame at which two sounds differ, the end of the shorter one included; -1 when they are the same. */
export const firstDifference = (one: ArrayLike<number>, other: ArrayLike<number>): number => {
  const shared = Math.min(one.length, other.length);
  for (let frame = 0; frame < shared; frame += 1) if (!Object.is(one[frame], other[frame])) return frame;
  return one.length === other.length ? -1 : shared;
};

/** Highest amplitude from one frame to another. */
export const peakBetween = (samples: Float32Array, from: number, to: number): number => {
  let peak = 0;
  for (let frame = Math.max(0, Math.floor(from)); frame < Math.min(samples.length, to); frame += 1) {
    peak = Math.max(peak, Math.abs(samples[frame]));
  }
  return peak;
};

/**
 * First frame within a stretch at which the sound has risen to a share of the stretch's peak; -1 when it is silent.
 */
export const riseBetween = (samples: Float32Array, from: number, to: number, share = 0.2): number => {
  const threshold = peakBetween(samples, from, to) * share;
  if (threshold < 1e-5) return -1;
  for (let frame = Math.max(0, Math.floor(from)); frame < Math.min(samples.length, to); frame += 1) {
    if (Math.abs(samples[frame]) >= threshold) return frame;
  }
  return -1;
};

/** Root mean square of consecutive blocks. */
export const blockLevels = (samples: Float32Array, block: number): number[] =>
  Array.from({ length: Math.floor(samples.length / block) }, (_, index) => {
    let sum = 0;
    for (let frame = index * block; frame < (index + 1) * block; frame += 1) sum += samples[frame] ** 2;
    return Math.sqrt(sum / block);
  });

/** Longest run of blocks below a level. */
export const longestBelow = (levels: readonly number[], level: number): number => {
  let longest = 0;
  let run = 0;
  for (const value of levels) {
    run = value < level ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
};

/** Greatest bend of the wave from one sample to the next: a click stands far above any played note. */
export const sharpestBend = (samples: Float32Array, from: number, to: number): number => {
  let sharpest = 0;
  for (let frame = Math.max(2, Math.floor(from)); frame < Math.min(samples.length, to); frame += 1) {
    sharpest = Math.max(sharpest, Math.abs(samples[frame] - 2 * samples[frame - 1] + samples[frame - 2]));
  }
  return sharpest;
};

/** A high-pass of the second order without resonance, one pole after another. */
const above = (samples: Float32Array, hz: number, sampleRate: number): Float32Array => {
  const keep = Math.exp((-2 * Math.PI * hz) / sampleRate);
  const out = new Float32Array(samples);
  for (const _ of [1, 2]) {
    let low = 0;
    for (let i = 0; i < out.length; i += 1) {
      low = (1 - keep) * out[i] + keep * low;
      out[i] -= low;
    }
  }
  return out;
};

/** How wide a sound is above a frequency: the power of half the difference of its sides over half their sum, in dB. */
export const widthAbove = (
  [left, right]: readonly [Float32Array, Float32Array],
  hz: number,
  sampleRate: number,
): number => {
  const [l, r] = [above(left, hz, sampleRate), above(right, hz, sampleRate)];
  let [side, mid] = [0, 0];
  for (let i = 0; i < l.length; i += 1) {
    side += (l[i] - r[i]) ** 2;
    mid += (l[i] + r[i]) ** 2;
  }
  return 10 * Math.log10(side / mid);
};

/** Amplitude of one frequency over a stretch, by a Hann-windowed Fourier sum. */
export const amplitudeAt = (samples: Float32Array, sampleRate: number, hz: number): number => {
  let real = 0;
  let imaginary = 0;
  let weight = 0;
  for (let frame = 0; frame < samples.length; frame += 1) {
    const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * frame) / samples.length);
    const phase = (2 * Math.PI * hz * frame) / sampleRate;
    real += samples[frame] * window * Math.cos(phase);
    imaginary += samples[frame] * window * Math.sin(phase);
    weight += window;
  }
  return (2 * Math.hypot(real, imaginary)) / weight;
};
