/**
 * The loudness a sum of partials will have, worked out from the partials instead of the samples, so that every key,
 * velocity and stroke of a voice comes out at the loudness its table asks for.
 * Source: Recommendation ITU-R BS.1770-4, annex 1 (K-weighting, −0.691 dB offset); the filter corners are those of
 * its 48 kHz coefficients read back as analogue prototypes.
 */

/** A shelf for the head: its corner in Hz, its quality, and its gain above and at the corner. */
export const SHELF = {
  hz: 1681.974450955533,
  quality: 0.7071752369554196,
  high: 1.584864701130855,
  band: 1.258720930232562,
};
/** The high-pass below it. */
export const HIGH_PASS = { hz: 38.13547087602444, quality: 0.5003270373238773 };

/** Power factor of the K-weighting at a frequency in Hz. */
export const kWeightedPower = (frequency: number): number => {
  const x = frequency / SHELF.hz;
  const y = frequency / HIGH_PASS.hz;
  const shelf =
    ((1 - SHELF.high * x * x) ** 2 + ((SHELF.band * x) / SHELF.quality) ** 2) /
    ((1 - x * x) ** 2 + (x / SHELF.quality) ** 2);
  const highPass = y ** 4 / ((1 - y * y) ** 2 + (y / HIGH_PASS.quality) ** 2);
  return shelf * highPass;
};

/** Loudness in LUFS of one channel that carries this mean K-weighted power. */
export const loudnessOfPower = (power: number): number => -0.691 + 10 * Math.log10(power);
