import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  asReferencePitch,
  centsBetween,
  EQUAL_TEMPERAMENT,
  hzOf,
  midiOf,
} from '../../../src/core/theory/temperament';
import { asCents, asHz, asMidi } from '../../../src/core/theory/units';

describe('hzOf', () => {
  it('moves a pitch class by its cents only', () => {
    const cents = Array.from({ length: 12 }, (_, i) => asCents(i === 4 ? -14 : 0));
    const temperament = { reference: asHz(440), cents };
    expect(centsBetween(hzOf(asMidi(64)), hzOf(asMidi(64), temperament))).toBeCloseTo(-14, 9);
    expect(hzOf(asMidi(65), temperament)).toBe(hzOf(asMidi(65)));
  });

  it('refuses references and tables that cannot be', () => {
    expect(() => asReferencePitch(439)).toThrow('from 440 to 446 Hz, got 439');
    expect(() => hzOf(asMidi(60), { reference: asHz(447) })).toThrow('got 447');
    expect(() => hzOf(asMidi(60), { ...EQUAL_TEMPERAMENT, cents: [asCents(0)] })).toThrow(
      '12 values in cents, got 1',
    );
  });

  it('is undone by midiOf, and an octave doubles it', () => {
    const any = {
      pitch: fc.double({ min: 20, max: 108, noNaN: true }),
      at: fc.double({ min: 440, max: 446, noNaN: true }),
    };
    fc.assert(
      fc.property(any.pitch, any.at, (pitch, at) => {
        const reference = asReferencePitch(at);
        const hz = hzOf(asMidi(pitch), { reference });
        expect(midiOf(hz, reference)).toBeCloseTo(pitch, 9);
        expect(hzOf(asMidi(pitch + 12), { reference }) / hz).toBeCloseTo(2, 9);
      }),
    );
  });
});
