import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findSoundFontFlaw, MOST_SOUND_FONT_BYTES } from '../../../src/core/formats/sound-font';
import { BAND_SAMPLES, bandSoundFont, makeSoundFont } from '../../helpers/sound-font';

const whole = bandSoundFont();

/** Where a chunk's content begins. */
const find = (id: string): number => {
  const letters = [...id].map((letter) => letter.charCodeAt(0));
  for (let at = 0; at < whole.length - 8; at += 1) {
    if (letters.every((letter, i) => whole[at + i] === letter)) return at + 8;
  }
  throw new RangeError(`no chunk ${id}`);
};

const changed = (at: number, ...values: readonly number[]): Uint8Array => {
  const copy = whole.slice();
  copy.set(values, at);
  return copy;
};

const bytesOf = (words: string): Uint8Array => new TextEncoder().encode(words);

describe('findSoundFontFlaw', () => {
  it('finds nothing wrong with a whole file', () => {
    expect(findSoundFontFlaw(whole)).toBeNull();
  });

  it('reads version 3 files, and nothing newer', () => {
    expect(findSoundFontFlaw(changed(find('ifil'), 3, 0))).toBeNull();
    expect(findSoundFontFlaw(changed(find('ifil'), 4, 0))).toEqual({ kind: 'other version', version: 4 });
  });

  it.each([
    ['nothing', new Uint8Array(), { kind: 'empty' }],
    ['a text', bytesOf('A song for a Tuesday evening'), { kind: 'other' }],
    ['a few letters', bytesOf('RIFF'), { kind: 'other' }],
    ['a RIFF file of another form', bytesOf('RIFF\u0004\0\0\0WAVE'), { kind: 'other' }],
    ['half a file', whole.subarray(0, whole.length / 2), { kind: 'cut short', missing: whole.length / 2 }],
    ['all but a byte', whole.subarray(0, -1), { kind: 'cut short', missing: 1 }],
    ['an oversized part', changed(find('smpl') - 4, 255, 255, 255), { kind: 'damaged' }],
    ['a lost table', changed(find('igen') - 8, 0), { kind: 'damaged', detail: 'its table igen is missing' }],
    [
      'a zone list out of order',
      changed(find('phdr') + 24, 200),
      { kind: 'damaged', detail: 'its table phdr points to nothing' },
    ],
    [
      'a link to no instrument',
      changed(find('pgen') + 2, 99),
      { kind: 'damaged', detail: 'its table pgen names an instrument that is not there' },
    ],
    ['no presets', makeSoundFont([], BAND_SAMPLES), { kind: 'damaged', detail: 'it holds no instruments' }],
  ])('refuses %s', (_, bytes, flaw) => {
    expect(findSoundFontFlaw(bytes)).toMatchObject(flaw);
  });

  it('refuses a file that was filled with zeros before it has counted them', () => {
    const zeros = whole.slice();
    zeros.fill(0, 12);
    expect(zeros.length / 8).toBeGreaterThan(1000);
    expect(findSoundFontFlaw(zeros)).toEqual({ kind: 'damaged', detail: 'it has too many parts' });
  });

  it('refuses what is too large without looking into it', () => {
    const huge = new Uint8Array(MOST_SOUND_FONT_BYTES + 1);
    expect(findSoundFontFlaw(huge)).toEqual({ kind: 'too large', bytes: 200_000_001 });
  });

  it('answers for any bytes, and for a file with any of its bytes changed or lost', () => {
    const kinds = ['empty', 'too large', 'other', 'cut short', 'other version', 'damaged', undefined];
    const place = fc.nat({ max: whole.length - 1 });
    const altered = fc
      .record({ edits: fc.array(fc.tuple(place, fc.nat({ max: 255 })), { maxLength: 5 }), end: place })
      .map(({ edits, end }) => {
        const copy = whole.slice(0, whole.length - (end % 50));
        for (const [at, value] of edits) if (at < copy.length) copy[at] = value;
        return copy;
      });
    fc.assert(
      fc.property(fc.oneof(fc.uint8Array({ maxLength: 300 }), altered), (bytes) => {
        expect(kinds).toContain(findSoundFontFlaw(bytes)?.kind);
      }),
    );
  });
});
