/** What happens to a hit as a whole, in place: onset, late damping, filters. */

/** Constant parts of the sound below this frequency are removed. */
const DIRECT_CURRENT_HZ = 8;
/** Section qualities of a fourth-order Butterworth filter, 1 / (2 cos(π/8)) and 1 / (2 cos(3π/8)). */
const BUTTERWORTH_QUALITIES = [0.5412, 1.3066];
/** Corners stay below this share of the sample rate. */
const HIGHEST_CORNER = 0.45;

/** Half a cosine from silence to full over the first milliseconds. */
export const rise = (out: Float64Array, sampleRate: number, milliseconds: number): void => {
  const length = Math.round((milliseconds / 1000) * sampleRate);
  for (let i = 0; i < Math.min(length, out.length); i += 1)
    out[i] = (out[i] ?? 0) * (0.5 - 0.5 * Math.cos((Math.PI * i) / length));
};

/** A second decay on top, from `after` ms on with a T60 in ms. */
export const damp = (
  out: Float64Array,
  sampleRate: number,
  { after, t60 }: { readonly after: number; readonly t60: number },
): void => {
  const fall = 10 ** (-3000 / (t60 * sampleRate));
  let gain = 1;
  for (let i = Math.round((after / 1000) * sampleRate); i < out.length; i += 1) {
    gain *= fall;
    out[i] = (out[i] ?? 0) * gain;
  }
};

/** A fourth-order Butterworth low-pass with its corner in Hz. */
export const lowPass = (out: Float64Array, sampleRate: number, corner: number): void => {
  const angle = 2 * Math.PI * Math.min(corner / sampleRate, HIGHEST_CORNER);
  for (const quality of BUTTERWORTH_QUALITIES) {
    const alpha = Math.sin(angle) / (2 * quality);
    const b = (1 - Math.cos(angle)) / 2 / (1 + alpha);
    const a1 = (-2 * Math.cos(angle)) / (1 + alpha);
    const a2 = (1 - alpha) / (1 + alpha);
    let [x1, x2, y1, y2] = [0, 0, 0, 0];
    for (let i = 0; i < out.length; i += 1) {
      const x = out[i] ?? 0;
      const y = b * (x + 2 * x1 + x2) - a1 * y1 - a2 * y2;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      out[i] = y;
    }
  }
};

/** A one-pole high-pass far below hearing. */
export const removeDirectCurrent = (out: Float64Array, sampleRate: number): void => {
  const pole = Math.exp((-2 * Math.PI * DIRECT_CURRENT_HZ) / sampleRate);
  let before = 0;
  let y = 0;
  for (let i = 0; i < out.length; i += 1) {
    const x = out[i] ?? 0;
    y = x - before + pole * y;
    before = x;
    out[i] = y;
  }
};
