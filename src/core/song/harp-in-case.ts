import { aHarp } from '../fit/advice-words';
import type { OwnedHarp } from '../harp/harp-case';
import { sameNotes } from '../harp/same-harp';
import type { Settings } from '../settings/settings';
import { ENGLISH } from '../theory/note-names';

/** The harp in hand as it goes into the case, under an id no harp there has. */
export const harpForCase = (settings: Settings, harpCase: readonly OwnedHarp[]): OwnedHarp => {
  const used = new Set(harpCase.map(({ id }) => id));
  let number = harpCase.length + 1;
  while (used.has(`harp-${number}`)) number += 1;
  return {
    id: `harp-${number}`,
    name: '',
    tuning: settings.tuning,
    key: settings.harpKey,
    octave: settings.harpOctave,
    intonation: settings.intonation,
    reference: settings.reference,
    stretch: settings.stretch,
    valved: settings.valved,
  };
};

/** The harp of the case that gives the notes of the harp chosen; null where there is none. */
export const inCase = (
  { harpKey: key, harpOctave: octave, tuning }: Settings,
  harpCase: readonly OwnedHarp[],
): OwnedHarp | null => harpCase.find((harp) => sameNotes(harp, { key, octave, tuning })) ?? null;

/**
 * What to say where a choice asks for another harp: `You will need a D harp.` Null where the harp stays. A case that
 * holds something, but not this harp, is mentioned.
 */
export const swapSentence = (
  before: Settings,
  after: Settings,
  harpCase: readonly OwnedHarp[],
): string | null => {
  if (before.harpKey === after.harpKey) return null;
  const { harpKey: key, harpOctave: octave, tuning } = after;
  const missing = harpCase.length > 0 && inCase(after, harpCase) === null;
  return ENGLISH.key(
    `You will need ${aHarp({ key, octave, tuning })}${missing ? ', which is not in your case' : ''}.`,
  );
};
