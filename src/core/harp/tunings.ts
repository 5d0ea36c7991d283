import { keyName } from '../theory/pitch';
import { asPitchClass, type PitchClass } from '../theory/units';
import type { Tuning } from './harp';

/** A tuning of the table: the layout, what is published about it, and how its covers are labelled. */
export interface SourcedTuning extends Tuning {
  /** One line in words for the player. */
  readonly description: string;
  /** Where the reed table is published, or that it is from memory. */
  readonly evidence: string;
  /**
   * Semitones from the harp key used here (the standard harp of the same range) up to the key usually printed on
   * the cover; present only where the two differ and one label is the usual one.
   */
  readonly coverOffset?: number;
  /** What to know about labels before buying or picking up such a harp. */
  readonly labelNote?: string;
}

const RICHTER_BLOW = [0, 4, 7, 12, 16, 19, 24, 28, 31, 36] as const;
const RICHTER_DRAW = [2, 7, 11, 14, 17, 21, 23, 26, 29, 33] as const;
const MINOR_BLOW = [0, 3, 7, 12, 15, 19, 24, 27, 31, 36] as const;
const MINOR_SEVENTHS_DRAW = [2, 7, 10, 14, 17, 21, 22, 26, 29, 33] as const;

const TABLES_OF_TUNINGS = 'Wikibooks, "Harmonica/Harmonica Layouts and Alternate Tunings"';
const MINOR_TUNINGS = 'web article AHN3.html on minor tunings, 2005';

/**
 * Reed tables, standard layout first: semitones above the harp key, hole 1 first. Generic names, because trade
 * names are used for different layouts ("Anthology of Harmonica Tunings", 2011, files one layout under the name of
 * another); what counts is the reeds. To add one, add a row here and its notes to the reference test of tunings.
 */
export const TUNINGS: readonly [SourcedTuning, ...SourcedTuning[]] = [
  {
    id: 'richter',
    name: 'Standard (Richter)',
    description: 'The common blues harp: blow gives the tonic chord, draw the dominant.',
    blow: RICHTER_BLOW,
    draw: RICHTER_DRAW,
    evidence: `OEIS A291810; Wikipedia, "Richter-tuned harmonica"; ${TABLES_OF_TUNINGS}`,
  },
  {
    id: 'raised-five-draw',
    name: 'Raised 5 draw',
    description: 'Draw 5 a semitone higher: a major seventh for major melodies in second position.',
    blow: RICHTER_BLOW,
    draw: [2, 7, 11, 14, 18, 21, 23, 26, 29, 33],
    evidence:
      'Harmonica World, December 2011, "Country harmonica tuning"; harp-l archive, November 2004, msg00752',
  },
  {
    id: 'raised-five-and-nine-draw',
    name: 'Raised 5 and 9 draw (major seventh)',
    description: 'Draw 5 and 9 a semitone higher: the major seventh of second position in both octaves.',
    blow: RICHTER_BLOW,
    draw: [2, 7, 11, 14, 18, 21, 23, 26, 30, 33],
    evidence: 'from memory; the name is used for more than one layout, so check the reeds',
  },
  {
    id: 'natural-minor',
    name: 'Natural minor',
    description: 'Minor thirds in both chords: second position is a natural minor key.',
    blow: MINOR_BLOW,
    draw: MINOR_SEVENTHS_DRAW,
    evidence: `${MINOR_TUNINGS}; letters by arithmetic from its text`,
    coverOffset: 7,
    labelNote:
      'Usually labelled by its second-position key: a harp marked Gm has the range of a C harp. Some makers label by first position instead; blow hole 1 tells which.',
  },
  {
    id: 'dorian',
    name: 'Dorian',
    description:
      'Standard blow notes with minor draw chords: second position is dorian, first is mixolydian.',
    blow: RICHTER_BLOW,
    draw: MINOR_SEVENTHS_DRAW,
    evidence: MINOR_TUNINGS,
    labelNote:
      'Often built from parts of two harps, so its cover may name the first or the second position; blow hole 1 tells which.',
  },
  {
    id: 'harmonic-minor',
    name: 'Harmonic minor',
    description: 'A minor tonic chord with a major dominant: first position is harmonic minor.',
    blow: MINOR_BLOW,
    draw: [2, 7, 11, 14, 17, 20, 23, 26, 29, 32],
    evidence: 'from memory',
    labelNote:
      'Labelled by its first-position key: a harp marked Cm starts on C. Natural minor harps usually are not.',
  },
  {
    id: 'raised-three-blow',
    name: 'Raised 3 blow',
    description:
      'Blow 3 a whole tone higher: the missing sixth for fiddle tunes, in place of a doubled note.',
    blow: [0, 4, 9, 12, 16, 19, 24, 28, 31, 36],
    draw: RICHTER_DRAW,
    evidence: 'from memory; that it exists: "Anthology of Harmonica Tunings", 2011',
  },
  {
    id: 'raised-three-blow-five-and-nine-draw',
    name: 'Raised 3 blow, 5 and 9 draw',
    description:
      'Blow 3 a whole tone, draw 5 and 9 a semitone higher: second position has a whole major scale without bends.',
    blow: [0, 4, 9, 12, 16, 19, 24, 28, 31, 36],
    draw: [2, 7, 11, 14, 18, 21, 23, 26, 30, 33],
    evidence:
      'from memory; by arithmetic: the changes of "Raised 3 blow" and of "Raised 5 and 9 draw" together',
  },
  {
    id: 'solo',
    name: 'Solo',
    description: 'The same octave three times over, complete without bends.',
    blow: [0, 4, 7, 12, 12, 16, 19, 24, 24, 28],
    draw: [2, 5, 9, 11, 14, 17, 21, 23, 26, 29],
    evidence: 'Wikipedia, "Solo tuning" (ten holes of its twelve-hole pattern)',
  },
  {
    id: 'circular-mixolydian',
    name: 'Circular, from the fifth',
    description: 'Thirds all the way up on each breath; blow 1 begins a mixolydian scale.',
    blow: [0, 4, 7, 10, 14, 17, 21, 24, 28, 31],
    draw: [2, 5, 9, 12, 16, 19, 22, 26, 29, 33],
    evidence: 'web article "Circular tuned harmonicas" (published for G)',
    labelNote: 'Its label names blow 1, which is the fifth of the major key its notes belong to.',
  },
  {
    id: 'circular-major',
    name: 'Circular, from the tonic',
    description: 'Thirds all the way up on each breath; blow 1 begins a major scale.',
    blow: [0, 4, 7, 11, 14, 17, 21, 24, 28, 31],
    draw: [2, 5, 9, 12, 16, 19, 23, 26, 29, 33],
    evidence: 'by arithmetic: a rotation of the published layout from the fifth',
  },
  {
    id: 'diminished',
    name: 'Diminished',
    description: 'Every hole a whole step, minor thirds along: three breath patterns give all twelve keys.',
    blow: [0, 3, 6, 9, 12, 15, 18, 21, 24, 27],
    draw: [2, 5, 8, 11, 14, 17, 20, 23, 26, 29],
    evidence: 'web note "Diminished tuning"',
  },
  {
    id: 'augmented',
    name: 'Augmented',
    description: 'Every hole a minor third, major thirds along: four breath patterns give all twelve keys.',
    blow: [0, 4, 8, 12, 16, 20, 24, 28, 32, 36],
    draw: [3, 7, 11, 15, 19, 23, 27, 31, 35, 39],
    evidence: 'from memory',
  },
  {
    id: 'balanced-harmonic-minor',
    name: 'Balanced harmonic minor',
    description:
      'A minor seventh chord on one breath and a diminished one on the other, the same in every octave.',
    blow: [0, 3, 7, 10, 12, 15, 19, 22, 24, 27],
    draw: [2, 5, 8, 11, 14, 17, 20, 23, 26, 29],
    evidence: 'US patent 8,153,875 B1 (2012) for the steps of both rows; letters by arithmetic',
  },
];

/** The standard layout. */
export const RICHTER: SourcedTuning = TUNINGS[0];

/** The tuning of an id in the table, or null when the table has none. */
export const findTuning = (id: string): SourcedTuning | null =>
  TUNINGS.find((each) => each.id === id) ?? null;

/**
 * What a cover usually says where that differs from the harp key used here, ASCII accidentals, or null: a natural
 * minor harp of key C is sold as Gm.
 */
export const coverSentence = (tuning: SourcedTuning, key: PitchClass): string | null => {
  if (tuning.coverOffset === undefined) return null;
  const printed = keyName(asPitchClass(key + tuning.coverOffset), 'minor');
  return `Its cover usually says ${printed}m; it has the range of a ${keyName(key, 'major')} harp.`;
};
