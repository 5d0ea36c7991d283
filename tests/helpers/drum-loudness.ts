/**
 * Loudness of one channel at 48 kHz.
 * Source of the filters: ITU-R BS.1770-5, tables 1 and 2 (coefficients for 48 kHz) and equation 2 (−0.691 dB).
 */
const SHELF = {
  b: [1.53512485958697, -2.69169618940638, 1.19839281085285],
  a: [-1.69065929318241, 0.73248077421585],
} as const;
const HIGH_PASS = { b: [1, -2, 1], a: [-1.99004745483398, 0.99007225036621] } as const;

const filtered = (samples: Float64Array, { b, a }: typeof SHELF | typeof HIGH_PASS): Float64Array => {
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  return samples.map((x) => {
    const y = b[0] * x + b[1] * x1 + b[2] * x2 - a[0] * y1 - a[1] * y2;
    [x2, x1, y2, y1] = [x1, x, y1, y];
    return y;
  });
};

/** Maximum loudness over 400 ms in LUFS, read every 10 ms. Throws RangeError unless the rate is 48 kHz. */
export const loudnessOf = (samples: Float32Array, sampleRate: number): number => {
  if (sampleRate !== 48000) throw new RangeError(`the published filters are for 48000 Hz, got ${sampleRate}`);
  const weighted = filtered(filtered(Float64Array.from(samples), SHELF), HIGH_PASS);
  const sums = new Float64Array(samples.length + 1);
  weighted.forEach((value, i) => {
    sums[i + 1] = (sums[i] ?? 0) + value * value;
  });
  let most = 1e-20;
  for (let end = 0; end <= samples.length; end += 480) {
    most = Math.max(most, ((sums[end] ?? 0) - (sums[Math.max(0, end - 19200)] ?? 0)) / 19200);
  }
  return -0.691 + 10 * Math.log10(most);
};
