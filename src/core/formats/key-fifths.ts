import type { NoteName } from '../theory/chord';
import type { KeyMode } from '../theory/pitch';

const NATURAL_FIFTHS: Readonly<Record<string, number>> = { F: -1, C: 0, G: 1, D: 2, A: 3, E: 4, B: 5 };

/** A spelled note as letter and semitones of its accidentals: `Bb` is B and −1. Throws RangeError on other text. */
export const stepAndAlter = (name: NoteName): { readonly step: string; readonly alter: number } => {
  const [, step, sharps, flats] = /^([A-G])(?:(#*)|(b*))$/.exec(name) ?? [];
  if (step === undefined) throw new RangeError(`Not a note name: "${name}"`);
  return { step, alter: (sharps ?? '').length - (flats ?? '').length };
};

/**
 * Sharps (+) or flats (−) of a key's signature, by the circle of fifths. A key that would need more than seven
 * takes the signature of its enharmonic twin (G# major that of Ab). Throws RangeError when the tonic is no note name.
 */
export const keyFifths = (tonic: NoteName, mode: KeyMode): number => {
  const { step, alter } = stepAndAlter(tonic);
  const fifths = (NATURAL_FIFTHS[step] ?? 0) + 7 * alter - (mode === 'minor' ? 3 : 0);
  if (fifths > 7) return fifths - 12;
  return fifths < -7 ? fifths + 12 : fifths;
};
