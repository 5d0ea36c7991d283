import type { NoteName } from './chord';
import type { NameParts } from './chord-text';

const LETTERS = 'CDEFGAB';
/** Semitones of the natural letters above C; with C as its key note they are also the major scale. */
const NATURAL = [0, 2, 4, 5, 7, 9, 11] as const;

const pitchOf = (name: NoteName): number =>
  (NATURAL[LETTERS.indexOf(name.charAt(0))] ?? 0) + (name.length - 1) * (name.endsWith('b') ? -1 : 1);

/**
 * A note as its number in a key: its letter counted from the key note's, against the major scale there, so that a
 * minor key has ♭3, ♭6 and ♭7. The accidental stands before the number, and so in one part with it.
 */
export const numberParts = (name: NoteName, tonic: NoteName): NameParts => {
  const step = (LETTERS.indexOf(name.charAt(0)) - LETTERS.indexOf(tonic.charAt(0)) + 7) % 7;
  const above = pitchOf(name) - pitchOf(tonic) - (NATURAL[step] ?? 0);
  const off = ((((above + 6) % 12) + 12) % 12) - 6;
  return { letter: `${(off < 0 ? '♭' : '♯').repeat(Math.abs(off))}${step + 1}`, accidental: '' };
};
