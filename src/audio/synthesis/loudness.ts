/**
 * The loudness a sum of partials will have, worked out from the partials instead of the samples, so that every key,
 * velocity and stroke of a voice comes out at the loudness its table asks for.
 * Source: Recommendation ITU-R BS.1770-4, annex 1 (K-weighting, −0.691 dB offset); the filter corners are those of
 * its 48 kHz coefficients read back as analogue prototypes.
 */

const SHELF = { frequency: 1681.97, q: 0.70718, gain: 10 ** (4 / 20), middle: 10 ** ((4 * 0.49967) / 20) };
const HIGH_PASS = { frequency: 38.135, q: 0.50033 };

/** Power factor of the K-weighting at a frequency in Hz. */
export const kWeightedPower = (frequency: number): number => {
  const x = frequency / SHELF.frequency;
  const y = frequency / HIGH_PASS.frequency;
  const shelf =
    ((1 - SHELF.gain * x * x) ** 2 + ((SHELF.middle * x) / SHELF.q) ** 2) /
    ((1 - x * x) ** 2 + (x / SHELF.q) ** 2);
  const highPass = y ** 4 / ((1 - y * y) ** 2 + (y / HIGH_PASS.q) ** 2);
  return shelf * highPass;
};

/** Loudness in LUFS of one channel that carries this mean K-weighted power. */
export const loudnessOfPower = (power: number): number => -0.691 + 10 * Math.log10(power);
