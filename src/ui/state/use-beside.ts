import type { Degree, NoteName } from '../../core/theory/chord';
import { degreeText } from '../../core/theory/note-names';
import { useSelected } from './session-context';
import { useNames } from './use-names';

/** What a sound is at this moment: `FitSound` and a note of a line are. */
export interface Meaning {
  readonly name: NoteName;
  readonly degree: Degree;
}

/** What the player wants to read beside tab, with a space before it; empty where that is nothing. */
export const useBeside = (): ((meaning: Meaning) => string) => {
  const beside = useSelected((state) => state.settings.besideTab);
  const plain = useSelected((state) => state.settings.plainWords);
  const names = useNames();
  const named = beside === 'notes' || beside === 'both';
  const counted = !plain && (beside === 'degrees' || beside === 'both');
  return ({ name, degree }) =>
    `${named ? ` ${names.note(name)}` : ''}${counted ? ` ${degreeText(degree)}` : ''}`;
};
