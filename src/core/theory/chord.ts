import type { PitchClass } from './units';

/** A spelled note without octave, in ASCII: `Bb`, `F#`, `Cb`. Shown through `NoteNames`. */
export type NoteName = string;

/** A chord tone's place above the root, in ASCII: `R`, `b3`, `3`, `5`, `b7`, `9`, `#11`, … */
export type Degree = string;

/** A note of a chord, spelled as the chord spells it. */
export interface ChordTone {
  readonly degree: Degree;
  readonly pitchClass: PitchClass;
  readonly name: NoteName;
}

/** A chord in a key, spelled as a musician would. */
export interface Chord {
  /** Roman numeral in the key, ASCII: `I7`, `iv7`, `bVI7`, `#ivo7`. */
  readonly roman: string;
  /** Chord symbol, ASCII: `Bb7`, `F#m7b5`, `C7/E`. */
  readonly symbol: string;
  readonly root: PitchClass;
  readonly rootName: NoteName;
  /** The symbol without root and bass, as tonal names it: `7`, `m7`, `dim7`, ``. */
  readonly quality: string;
  /** The lowest note where it is not the root (slash chords); otherwise the root. */
  readonly bass: PitchClass;
  /** Root first, upwards. */
  readonly tones: readonly ChordTone[];
}
