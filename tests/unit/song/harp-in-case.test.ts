import { describe, expect, it } from 'vitest';
import { findTuning } from '../../../src/core/harp/tunings';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { harpForCase, inCase, swapSentence } from '../../../src/core/song/harp-in-case';
import { withSongKey } from '../../../src/core/song/key-coupling';
import { asPitchClass } from '../../../src/core/theory/units';

const [C, D, E_FLAT, F, G, A, B] = [0, 2, 3, 5, 7, 9, 11].map(asPitchClass);

const withHarp = (harpKey: number, change = {}) => ({
  ...DEFAULT_SETTINGS,
  harpKey: asPitchClass(harpKey),
  ...change,
});

describe('the sentence about another harp', () => {
  // Second position lies a fifth above the harp: the song in A wants a D harp (common practice, no source).
  it('names the harp a song key asks for', () => {
    expect(swapSentence(DEFAULT_SETTINGS, withSongKey(DEFAULT_SETTINGS, A), [])).toBe(
      'You will need a D harp.',
    );
  });

  it.each([
    [C, 'a C harp'],
    [D, 'a D harp'],
    [E_FLAT, 'an E♭ harp'],
    [F, 'an F harp'],
    [A, 'an A harp'],
    [B, 'a B harp'],
  ])('has the article its letter is spoken with: key %i', (key, words) => {
    expect(swapSentence(withHarp(7), withHarp(key), [])).toBe(`You will need ${words}.`);
  });

  it('names range and tuning, where they are not the usual ones', () => {
    const tuning = findTuning('natural-minor');
    if (tuning === null) throw new Error('There is no such tuning');
    expect(swapSentence(withHarp(7, { tuning }), withHarp(F, { tuning, harpOctave: -1 }), [])).toBe(
      'You will need a low F harp, natural minor.',
    );
  });

  it('says nothing where the harp stays, and where a locked harp changes position', () => {
    expect(swapSentence(DEFAULT_SETTINGS, { ...DEFAULT_SETTINGS, position: 3 }, [])).toBeNull();
    const locked = { ...DEFAULT_SETTINGS, harpLocked: true };
    expect(swapSentence(locked, withSongKey(locked, A), [])).toBeNull();
  });

  it('mentions a case that does not hold it', () => {
    const owned = [harpForCase(withHarp(C), [])];
    expect(swapSentence(DEFAULT_SETTINGS, withHarp(D), owned)).toBe(
      'You will need a D harp, which is not in your case.',
    );
    expect(swapSentence(withHarp(G), withHarp(C), owned)).toBe('You will need a C harp.');
  });
});

describe('a harp for the case', () => {
  it('has an id no other has, and is found by its notes', () => {
    const first = harpForCase(withHarp(C), []);
    const second = harpForCase(withHarp(D), [first]);
    const third = harpForCase(withHarp(G), [second]);
    expect(new Set([first.id, second.id, third.id]).size).toBe(3);
    expect(inCase(withHarp(D), [first, second])).toBe(second);
    expect(inCase(withHarp(D, { harpOctave: -1 }), [first, second])).toBeNull();
  });
});
