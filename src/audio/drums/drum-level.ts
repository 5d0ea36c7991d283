/**
 * Loudness of a hit by the filters of ITU-R BS.1770-5 (a shelf for the head, a high-pass), so that every stroke of a
 * sound comes out as loud as its velocity asks, whatever its noise did.
 */
import type { Biquad } from '../../core/signal/biquad';
import { HIGH_PASS, loudnessOfPower, SHELF } from '../synthesis/loudness';

/** The momentary window. */
const WINDOW_SECONDS = 0.4;

const shelf = (sampleRate: number): Biquad => {
  const k = Math.tan((Math.PI * SHELF.hz) / sampleRate);
  const scale = 1 + k / SHELF.quality + k * k;
  return {
    b0: (SHELF.high + (SHELF.band * k) / SHELF.quality + k * k) / scale,
    b1: (2 * (k * k - SHELF.high)) / scale,
    b2: (SHELF.high - (SHELF.band * k) / SHELF.quality + k * k) / scale,
    a1: (2 * (k * k - 1)) / scale,
    a2: (1 - k / SHELF.quality + k * k) / scale,
  };
};

const highPass = (sampleRate: number): Biquad => {
  const k = Math.tan((Math.PI * HIGH_PASS.hz) / sampleRate);
  const scale = 1 + k / HIGH_PASS.quality + k * k;
  return {
    b0: 1,
    b1: -2,
    b2: 1,
    a1: (2 * (k * k - 1)) / scale,
    a2: (1 - k / HIGH_PASS.quality + k * k) / scale,
  };
};

/** Loudness in LUFS of the first 400 ms of one channel, where a hit is loudest. −Infinity for silence. */
export const hitLoudness = (samples: Float64Array | Float32Array, sampleRate: number): number => {
  const s = shelf(sampleRate);
  const h = highPass(sampleRate);
  const window = Math.round(WINDOW_SECONDS * sampleRate);
  let [x1, x2, y1, y2, z1, z2, sum] = [0, 0, 0, 0, 0, 0, 0];
  for (let i = 0; i < Math.min(window, samples.length); i += 1) {
    const x = samples[i] ?? 0;
    const y = s.b0 * x + s.b1 * x1 + s.b2 * x2 - s.a1 * y1 - s.a2 * y2;
    const z = h.b0 * y + h.b1 * y1 + h.b2 * y2 - h.a1 * z1 - h.a2 * z2;
    sum += z * z;
    x2 = x1;
    x1 = x;
    y2 = y1;
    y1 = y;
    z2 = z1;
    z1 = z;
  }
  return loudnessOfPower(sum / window);
};
