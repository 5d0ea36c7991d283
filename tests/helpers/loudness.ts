/**
 * Integrated loudness and true peak, written from Recommendation ITU-R BS.1770-4: K-weighting and gating from
 * annex 1, four-fold oversampling from annex 2. The filters are the analogue prototypes of the annex's 48 kHz
 * coefficients, so that other sample rates can be measured too.
 */

type Biquad = readonly [b0: number, b1: number, b2: number, a1: number, a2: number];

const shelf = (sampleRate: number): Biquad => {
  const k = Math.tan((Math.PI * 1681.974450955533) / sampleRate);
  const q = 0.7071752369554196;
  const high = 10 ** (3.999843853973347 / 20);
  const middle = high ** 0.4996667741545416;
  const a0 = 1 + k / q + k * k;
  return [
    (high + (middle * k) / q + k * k) / a0,
    (2 * (k * k - high)) / a0,
    (high - (middle * k) / q + k * k) / a0,
    (2 * (k * k - 1)) / a0,
    (1 - k / q + k * k) / a0,
  ];
};

const highPass = (sampleRate: number): Biquad => {
  const k = Math.tan((Math.PI * 38.13547087602444) / sampleRate);
  const q = 0.5003270373238773;
  const a0 = 1 + k / q + k * k;
  return [1, -2, 1, (2 * (k * k - 1)) / a0, (1 - k / q + k * k) / a0];
};

const filtered = (samples: Float32Array | Float64Array, [b0, b1, b2, a1, a2]: Biquad): Float64Array => {
  const out = new Float64Array(samples.length);
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  for (let index = 0; index < samples.length; index += 1) {
    const x = samples[index];
    const y = b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2;
    [x2, x1, y2, y1] = [x1, x, y1, y];
    out[index] = y;
  }
  return out;
};

/** The two filters of annex 1 in a row. */
export const kWeighted = (samples: Float32Array, sampleRate: number): Float64Array =>
  filtered(filtered(samples, shelf(sampleRate)), highPass(sampleRate));

const meanSquares = (weighted: Float64Array, block: number, step: number): number[] => {
  const means: number[] = [];
  for (let at = 0; at + block <= weighted.length; at += step) {
    let sum = 0;
    for (let index = at; index < at + block; index += 1) sum += weighted[index] ** 2;
    means.push(sum / block);
  }
  return means;
};

const loudnessOf = (power: number): number => -0.691 + 10 * Math.log10(power);
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Integrated loudness in LUFS of one or two front channels: 400 ms blocks, gates at −70 LUFS and 10 LU below. */
export const integratedLoudness = (channels: readonly Float32Array[], sampleRate: number): number => {
  const block = Math.round(0.4 * sampleRate);
  const step = Math.round(0.1 * sampleRate);
  const powers = channels
    .map((samples) => meanSquares(kWeighted(samples, sampleRate), block, step))
    .reduce((sums, means) => sums.map((sum, index) => sum + means[index]));
  const audible = powers.filter((power) => loudnessOf(power) > -70);
  if (audible.length === 0) return Number.NEGATIVE_INFINITY;
  const gate = loudnessOf(mean(audible)) - 10;
  return loudnessOf(mean(audible.filter((power) => loudnessOf(power) > gate)));
};

const OVERSAMPLING = 8;
const TAPS = 32;

const interpolator = Array.from({ length: OVERSAMPLING }, (_, phase) =>
  Float64Array.from({ length: TAPS }, (_, tap) => {
    const x = tap - (TAPS / 2 - 1) - phase / OVERSAMPLING;
    const window =
      0.42 + 0.5 * Math.cos((2 * Math.PI * x) / TAPS) + 0.08 * Math.cos((4 * Math.PI * x) / TAPS);
    return x === 0 ? 1 : (Math.sin(Math.PI * x) / (Math.PI * x)) * window;
  }),
);

/** Highest level between the samples in dBTP, oversampled eightfold (annex 2 asks for four at least). */
export const truePeak = (channels: readonly Float32Array[]): number => {
  let peak = 0;
  for (const samples of channels) {
    for (let at = 0; at + TAPS <= samples.length; at += 1) {
      const centre = Math.abs(samples[at + TAPS / 2 - 1]);
      const beside = Math.abs(samples[at + TAPS / 2]);
      peak = Math.max(peak, centre);
      // Between two samples far below the peak nothing can rise above it.
      if (Math.max(centre, beside) < peak / 2) continue;
      for (const row of interpolator) {
        let sum = 0;
        for (let tap = 0; tap < TAPS; tap += 1) sum += row[tap] * samples[at + tap];
        peak = Math.max(peak, Math.abs(sum));
      }
    }
  }
  return 20 * Math.log10(peak);
};
