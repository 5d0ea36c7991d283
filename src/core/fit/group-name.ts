import type { Degree } from '../theory/chord';
import { chordOf } from '../theory/chords';
import { type Spell, spellPitch } from '../theory/spelling';
import { asPitchClass, type Midi, type PitchClass } from '../theory/units';

/** What notes sounding together are called. */
export interface GroupName {
  /** In words, ASCII accidentals: `octave G`, `minor third`, `G major, root lowest`, `C–D–G`. */
  readonly text: string;
  /** The chord, where three or more different notes make one: `G`, `Dm`, `G7`. */
  readonly symbol: string | null;
  /** Root of that chord, or null. */
  readonly root: PitchClass | null;
}

/** Interval names by semitones; wider ones by octaves and the rest (common names of theory). */
const INTERVALS = [
  'unison',
  'minor second',
  'major second',
  'minor third',
  'major third',
  'fourth',
  'tritone',
  'fifth',
  'minor sixth',
  'major sixth',
  'minor seventh',
  'major seventh',
  'octave',
] as const;

const OCTAVES: readonly string[] = ['', 'an octave', 'two octaves', 'three octaves'];

/** An interval in words: `fifth`, `major third and an octave`. Throws RangeError when it is negative. */
export const intervalName = (semitones: number): string => {
  const plain = INTERVALS[semitones];
  if (plain !== undefined) return plain;
  if (!(semitones >= 0)) throw new RangeError(`An interval is 0 semitones or more, got ${semitones}`);
  const octaves = OCTAVES[Math.floor(semitones / 12)] ?? `${Math.floor(semitones / 12)} octaves`;
  return semitones % 12 === 0 ? octaves : `${INTERVALS[semitones % 12]} and ${octaves}`;
};

/** Chords that natural notes of harps make, the plainest reading first. */
const CHORDS: readonly { readonly quality: string; readonly words: string }[] = [
  { quality: '', words: 'major' },
  { quality: 'm', words: 'minor' },
  { quality: '7', words: 'dominant seventh' },
  { quality: 'm7', words: 'minor seventh' },
  { quality: 'm7b5', words: 'half-diminished' },
  { quality: 'maj7', words: 'major seventh' },
  { quality: 'dim', words: 'diminished' },
  { quality: 'dim7', words: 'diminished seventh' },
  { quality: 'aug', words: 'augmented' },
  { quality: 'mMaj7', words: 'minor with major seventh' },
  { quality: '7no5', words: 'dominant seventh without fifth' },
  { quality: 'sus4', words: 'suspended fourth' },
  { quality: '9', words: 'dominant ninth' },
  { quality: 'm9', words: 'minor ninth' },
  { quality: 'maj9', words: 'major ninth' },
];

interface NamedChord {
  readonly quality: string;
  readonly words: string;
  /** Degree of each pitch class above the root. */
  readonly degrees: ReadonlyMap<number, Degree>;
}

const NAMED: readonly NamedChord[] = CHORDS.map(({ quality, words }) => {
  const { tones } = chordOf({ root: 'C', quality });
  return { quality, words, degrees: new Map(tones.map(({ pitchClass, degree }) => [pitchClass, degree])) };
});

const findChord = (
  classes: readonly PitchClass[],
): { readonly root: PitchClass; readonly chord: NamedChord } | null => {
  const makes = (root: PitchClass, { degrees }: NamedChord): boolean =>
    degrees.size === classes.length && classes.every((each) => degrees.has(asPitchClass(each - root)));
  for (const root of classes) {
    const chord = NAMED.find((each) => makes(root, each));
    if (chord !== undefined) return { root, chord };
  }
  return null;
};

/**
 * Names notes sounding together: two different pitches as interval (octaves with their note), three or more different notes as chord with
 * its lowest tone, anything else by its notes. The lowest note is tried as root first, so that symmetric chords are
 * named from below. Throws RangeError on fewer than two notes.
 * @param spell names the notes.
 */
export const nameGroup = (pitches: readonly Midi[], spell: Spell): GroupName => {
  const rising = [...pitches].sort((a, b) => a - b);
  const [low] = rising;
  const high = rising.at(-1);
  if (low === undefined || high === undefined || rising.length < 2) {
    throw new RangeError(`A group needs 2 notes or more, got ${pitches.length}`);
  }
  const classes = [...new Set(rising.map((pitch) => asPitchClass(pitch)))];
  if (new Set(rising).size <= 2) {
    const interval = intervalName(high - low);
    const doubled = (high - low) % 12 === 0;
    return {
      text: doubled ? `${interval} ${spellPitch(low, spell)}` : interval,
      symbol: null,
      root: null,
    };
  }
  const found = classes.length < 3 ? null : findChord(classes);
  if (found === null)
    return {
      text: rising.map((pitch) => spellPitch(pitch, spell)).join('–'),
      symbol: null,
      root: null,
    };
  const root = spell(found.root);
  const lowest = found.chord.degrees.get(asPitchClass(low - found.root)) ?? 'R';
  return {
    text: `${root} ${found.chord.words}, ${lowest === 'R' ? 'root' : lowest} lowest`,
    symbol: `${root}${found.chord.quality}`,
    root: found.root,
  };
};
