import type { Chord } from '../theory/chord';
import { prettySymbol } from '../theory/chord-text';

/** Widths in ems of the root's letter, measured in the page's face at the sizes of the style sheet. */
const EMS = { root: 0.68, accidental: 0.36, qualitySign: 0.34, bass: 0.85, space: 0.45 } as const;

const chordEms = (chord: Chord): number => {
  const { accidental, quality, bass } = prettySymbol(chord);
  return (
    EMS.root +
    (accidental === '' ? 0 : EMS.accidental) +
    [...quality].length * EMS.qualitySign +
    (bass === null ? 0 : EMS.bass)
  );
};

/** About how wide chords stand side by side, a space after each, in ems of a root's letter. */
export const chordsEms = (chords: readonly { readonly chord: Chord }[]): number =>
  chords.reduce((sum, { chord }) => sum + chordEms(chord) + EMS.space, 0);
