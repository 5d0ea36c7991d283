import type { Chord } from '../theory/chord';
import type { NoteNames } from '../theory/note-names';

/** Widths in ems of the root's letter, measured in the page's face at the sizes of the style sheet. */
const EMS = { root: 0.68, accidental: 0.36, qualitySign: 0.34, bass: 0.85, space: 0.45 } as const;

const chordEms = (chord: Chord, names: NoteNames): number => {
  const { root, accidental, quality, bass } = names.symbol(chord);
  return (
    [...root].length * EMS.root +
    (accidental === '' ? 0 : EMS.accidental) +
    [...quality].length * EMS.qualitySign +
    (bass === null ? 0 : bass.letter.length * EMS.bass)
  );
};

/** About how wide chords stand side by side, a space after each, in ems of a root's letter. */
export const chordsEms = (chords: readonly { readonly chord: Chord }[], names: NoteNames): number =>
  chords.reduce((sum, { chord }) => sum + chordEms(chord, names) + EMS.space, 0);
