import { describe, expect, it } from 'vitest';
import { centsBetween, hzOf, STANDARD_PITCH } from '../../../src/core/theory/temperament';
import { asHz, asMidi } from '../../../src/core/theory/units';

describe('standard pitch', () => {
  // ISO 16:1975, "Acoustics — Standard tuning frequency": the A in the treble stave is 440 Hz.
  it('A4 is 440 Hz', () => {
    expect(STANDARD_PITCH).toBe(440);
    expect(hzOf(asMidi(69))).toBe(440);
  });
});

describe('equal temperament', () => {
  // Definition: each semitone is the twelfth root of 2. Figures to a hundredth of a hertz by that formula;
  // G3, F#7 and C4 are the ends and the start of the standard harp keys (Wikipedia, "Richter-tuned harmonica").
  it.each([
    [55, 196.0],
    [60, 261.63],
    [66, 369.99],
    [70, 466.16],
    [81, 880.0],
    [96, 2093.0],
    [102, 2959.96],
  ])('key %i sounds at %f Hz', (midi, hz) => {
    expect(hzOf(asMidi(midi))).toBeCloseTo(hz, 2);
  });
});

describe('reference pitches of the trade', () => {
  // Offsets by arithmetic, 1200·log2(f / 440). C4 at A443 is published as 263 Hz (tuning02.php, ohw.se, 2004).
  it.each([
    [441, 3.93],
    [442, 7.85],
    [443, 11.76],
    [444, 15.67],
    [446, 23.45],
  ])('A%i is %f cents above A440', (hz, cents) => {
    expect(centsBetween(asHz(440), asHz(hz))).toBeCloseTo(cents, 2);
  });

  it('C4 at A443 is 263.41 Hz', () => {
    expect(hzOf(asMidi(60), { reference: asHz(443) })).toBeCloseTo(263.41, 2);
  });
});

describe('just ratios', () => {
  // 1200·log2(ratio), to a hundredth of a cent; ratios of the published just tunings (ji_hca01.scl, ji_hca02.scl,
  // ji_hca03.scl, ji_hca23.scl, 2004).
  it.each([
    [9, 8, 203.91],
    [7, 6, 266.87],
    [19, 16, 297.51],
    [6, 5, 315.64],
    [11, 9, 347.41],
    [5, 4, 386.31],
    [21, 16, 470.78],
    [4, 3, 498.04],
    [171, 128, 501.42],
    [7, 5, 582.51],
    [3, 2, 701.96],
    [5, 3, 884.36],
    [27, 16, 905.87],
    [7, 4, 968.83],
    [16, 9, 996.09],
    [57, 32, 999.47],
    [9, 5, 1017.6],
    [15, 8, 1088.27],
  ])('%i/%i is %f cents', (numerator, denominator, cents) => {
    expect(centsBetween(asHz(denominator), asHz(numerator))).toBeCloseTo(cents, 2);
  });
});
