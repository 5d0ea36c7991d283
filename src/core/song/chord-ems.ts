import type { Chord } from '../theory/chord';
import type { NoteNames } from '../theory/note-names';

/** Widths in ems of the root's letter, measured in the page's face at the sizes of the style sheet. */
const EMS = { letter: 0.68, accidental: 0.36, qualitySign: 0.34, slash: 0.44, space: 0.45 } as const;

/** The same of names that are more than a letter, of which small letters are narrower. */
const NAME_EMS: Readonly<Record<string, number>> = {
  Do: 1.28,
  Re: 1.22,
  Mi: 1.18,
  Fa: 1.12,
  Sol: 1.53,
  La: 1.11,
  Si: 0.93,
};

/** A bass is so much smaller than its root. */
const BASS = 0.6;

const nameEms = (letter: string): number => NAME_EMS[letter] ?? [...letter].length * EMS.letter;

interface Parts {
  readonly root: number;
  readonly quality: number;
  readonly bass: number;
}

const partEms = (chord: Chord, names: NoteNames): Parts => {
  const { root, accidental, quality, bass } = names.symbol(chord);
  return {
    root: nameEms(root) + (accidental === '' ? 0 : EMS.accidental),
    quality: [...quality].length * EMS.qualitySign,
    bass: bass === null ? 0 : EMS.slash + nameEms(bass.letter) * BASS,
  };
};

/** About how wide chords stand side by side, a space after each, in ems of a root's letter. */
export const chordsEms = (chords: readonly { readonly chord: Chord }[], names: NoteNames): number =>
  chords.reduce((sum, { chord }) => {
    const { root, quality, bass } = partEms(chord, names);
    return sum + root + quality + bass + EMS.space;
  }, 0);

/** A symbol wider than this is long, and so are two with little more, in ems: beyond `B♭m7`, and beyond `G7 C7`. */
const LONG = { one: 2, another: 0.6 } as const;

/** Where they are set in lines, the smaller signs are this much larger. */
const LARGER = 1.12;

/** The widest of chords by how their symbols are set, in ems: in one line, kind and bass under the root, or all three. */
export interface ChordLines {
  readonly one: number;
  readonly two: number;
  readonly three: number;
}

/** How wide the widest of chords is in lines, where they are too long to be read side by side; null where they are not. */
export const chordLines = (
  chords: readonly { readonly chord: Chord }[],
  names: NoteNames,
): ChordLines | null => {
  if (chordsEms(chords, names) - EMS.space <= LONG.one + (chords.length - 1) * LONG.another) return null;
  const parts = chords.map(({ chord }) => partEms(chord, names));
  const widest = (of: (each: Parts) => number): number => Math.max(...parts.map(of));
  return {
    one: widest(({ root, quality, bass }) => root + (quality + bass) * LARGER),
    two: widest(({ root, quality, bass }) => Math.max(root, (quality + bass) * LARGER)),
    three: widest(({ root, quality, bass }) => Math.max(root, quality * LARGER, bass * LARGER)),
  };
};
