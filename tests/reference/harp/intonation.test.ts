import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { expectedCents, type IntonationId, intonate } from '../../../src/core/harp/intonation';
import { RICHTER } from '../../../src/core/harp/tunings';
import { centsBetween } from '../../../src/core/theory/temperament';
import { asHz, asPitchClass } from '../../../src/core/theory/units';

/** Cents per reed, hole 1 first: ji_hca01.scl, ji_hca02.scl, ji_hca03.scl, ji_hca23.scl and tuning02.php, ohw.se, 2004. */
const BLOW = [0, -14, 2, 0, -14, 2, 0, -14, 2, 0];
const DRAW: readonly (readonly [id: IntonationId, row: readonly number[]])[] = [
  ['just-first', [4, 2, -12, 4, -2, -16, -12, 4, -2, -16]],
  ['just-second', [4, 2, -12, 4, -29, 6, -12, 4, -29, 6]],
  ['just-third', [4, 2, -12, 4, 20, 6, -12, 4, 20, 6]],
  ['compromise', [4, 2, -12, 4, -2, 6, -12, 4, -2, 6]],
  ['nineteen-limit', [4, 2, -12, 4, 1, 6, -12, 4, 1, 6]],
];

describe('published tables of the standard layout', () => {
  it.each(DRAW)('%s', (id, draw) => {
    expect(intonate(RICHTER, id)).toEqual({ cents: { blow: BLOW, draw }, uncovered: [] });
  });

  // Definition of equal temperament.
  it('equal temperament is zero throughout', () => {
    const zeros = Array.from({ length: 10 }, () => 0);
    expect(intonate(RICHTER, 'equal').cents).toEqual({ blow: zeros, draw: zeros });
  });
});

describe('the ratios behind the tables', () => {
  // 1200·log2(ratio) less the equal-tempered step, rounded to whole cents as published.
  const fourths: readonly (readonly [IntonationId, number, number])[] = [
    ['just-first', 4, 3],
    ['just-second', 21, 16],
    ['just-third', 27, 20],
    ['compromise', 4, 3],
    ['nineteen-limit', 171, 128],
  ];
  const offset = (numerator: number, denominator: number, step: number): number =>
    Math.round(centsBetween(asHz(denominator), asHz(numerator)) - 100 * step);

  it('thirds, fifths, seconds and sevenths', () => {
    expect([offset(5, 4, 4), offset(3, 2, 7), offset(9, 8, 2), offset(15, 8, 11)]).toEqual([-14, 2, 4, -12]);
  });

  it.each(fourths)('the fourth of %s is %i/%i', (id, numerator, denominator) => {
    expect(intonate(RICHTER, id).cents.draw[4]).toBe(offset(numerator, denominator, 5));
  });

  it('the sixths are 5/3 and 27/16', () => {
    expect(intonate(RICHTER, 'just-first').cents.draw[5]).toBe(offset(5, 3, 9));
    expect(intonate(RICHTER, 'just-second').cents.draw[5]).toBe(offset(27, 16, 9));
  });
});

describe('heard against a piano', () => {
  const harp = buildHarp({
    tuning: RICHTER,
    key: asPitchClass(0),
    octave: 0,
    cents: intonate(RICHTER, 'just-second').cents,
  });
  const reed = (hole: number): number => {
    const found = harp.reeds.find((each) => each.breath === 'draw' && each.hole === hole);
    return found === undefined ? Number.NaN : 100 * found.pitch + found.cents;
  };

  // 21/16 above C over 3/2 above C is 7/4 above the G below: 968.83 cents; the table rounds each reed to a cent.
  it('draw 5 is a harmonic seventh above the tonic of second position', () => {
    expect(Math.abs(reed(5) - reed(2) - centsBetween(asHz(4), asHz(7)))).toBeLessThan(1);
  });

  // 1200·log2(443/440) = 11.76; A443 as the usual reference: tuning02.php, ohw.se, 2004.
  it('a reference of A443 lifts every reed by 11.76 cents', () => {
    const blowOne = harp.sounds.find(({ hole, breath }) => hole === 1 && breath === 'blow');
    expect(blowOne && expectedCents(blowOne, asHz(443))).toBeCloseTo(11.76, 2);
    const blowTwo = harp.sounds.find((each) => each.hole === 2 && each.breath === 'blow');
    expect(blowTwo && expectedCents(blowTwo, asHz(443))).toBeCloseTo(11.76 - 14, 2);
  });
});
