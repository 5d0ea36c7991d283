import type { Harp, Tuning } from './harp';
import type { OwnedHarp } from './harp-case';

/** True when two rows have the same values. */
export const sameRow = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((each, i) => each === b[i]);

/** True when two harps give the same notes: key, octave and every reed, whatever the tunings are called. */
export const sameNotes = (
  a: Pick<Harp, 'key' | 'octave' | 'tuning'>,
  b: Pick<Harp, 'key' | 'octave' | 'tuning'>,
): boolean => a.key === b.key && a.octave === b.octave && sameReeds(a.tuning, b.tuning);

const sameReeds = (a: Tuning, b: Tuning): boolean => sameRow(a.blow, b.blow) && sameRow(a.draw, b.draw);

const sameIntonation = (a: OwnedHarp['intonation'], b: OwnedHarp['intonation']): boolean =>
  typeof a === 'string' || typeof b === 'string'
    ? a === b
    : sameRow(a.cents.blow, b.cents.blow) && sameRow(a.cents.draw, b.cents.draw);

/** True when nothing but name and id tells two harps apart. */
export const sameHarp = (a: OwnedHarp, b: OwnedHarp): boolean =>
  sameNotes(a, b) &&
  sameRow(a.valved, b.valved) &&
  a.reference === b.reference &&
  a.stretch === b.stretch &&
  sameIntonation(a.intonation, b.intonation);

/** The harps that can be played differently: of those with the same notes and valves only the first. */
export const differentHarps = (harps: readonly OwnedHarp[]): readonly OwnedHarp[] =>
  harps.filter(
    (harp, i) =>
      !harps.slice(0, i).some((other) => sameNotes(other, harp) && sameRow(other.valved, harp.valved)),
  );
