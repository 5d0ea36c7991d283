import type { NoteName } from './chord';
import { type NameParts, prettyParts } from './chord-text';
import { numberParts } from './key-numbers';
import { BY_LETTERS, ENGLISH, type NoteNames, type NoteSystem, namesBy } from './note-names';

/** Letters under other names (for sources see the tests). */
const LETTERS: Readonly<Record<'german' | 'do', Readonly<Record<string, string>>>> = {
  german: { B: 'H' },
  do: { C: 'Do', D: 'Re', E: 'Mi', F: 'Fa', G: 'Sol', A: 'La', B: 'Si' },
};

const lettered =
  (system: 'german' | 'do') =>
  (name: NoteName): NameParts => {
    if (system === 'german' && name === 'Bb') return { letter: 'B', accidental: '' };
    const { letter, accidental } = prettyParts(name);
    return { letter: LETTERS[system][letter] ?? letter, accidental };
  };

const inDigits =
  (digits: string) =>
  (figures: string): string =>
    figures.replace(/\d/g, (figure) => digits.charAt(Number(figure)));

const makeNames = (system: NoteSystem, tonic: NoteName): NoteNames => {
  if (system === 'english') return ENGLISH;
  if (system === 'numbers') {
    return namesBy({
      ...BY_LETTERS,
      system,
      parts: (name) => numberParts(name, tonic),
      octave: inDigits('₀₁₂₃₄₅₆₇₈₉'),
      figures: inDigits('⁰¹²³⁴⁵⁶⁷⁸⁹'),
    });
  }
  const parts = lettered(system);
  return namesBy({ ...BY_LETTERS, system, parts, keyParts: parts });
};

/** Names made before: there are few, and whoever compares them asks for the same again. */
const made = new Map<string, NoteNames>();

/**
 * The names of a system, the same value each time.
 * @param tonic what numbers count from: the spelled tonic of the key.
 */
export const noteNames = (system: NoteSystem, tonic: NoteName = 'C'): NoteNames => {
  const id = system === 'numbers' ? `${system} ${tonic}` : system;
  const names = made.get(id) ?? makeNames(system, tonic);
  made.set(id, names);
  return names;
};
