import type { KeyMode } from '../theory/pitch';

/**
 * A turnaround: the two bars that lead a chorus back to its beginning, for everybody at once. Chords stand one a beat as
 * Roman numerals (a slash names the bass as a degree above the root, `-` goes on); the bass is one degree of the key a
 * beat, the root or the slash bass where a chord begins.
 */
export interface TurnaroundFigure {
  readonly id: string;
  readonly mode: KeyMode;
  readonly chords: readonly [string, string];
  readonly bass: readonly [string, string];
}

const major = <const Id extends string>(
  id: Id,
  chords: readonly [string, string],
  bass: readonly [string, string],
) => ({ id, mode: 'major', chords, bass }) as const;

const minor = <const Id extends string>(
  id: Id,
  chords: readonly [string, string],
  bass: readonly [string, string],
) => ({ id, mode: 'minor', chords, bass }) as const;

/**
 * The figures. Chords of `plain` after "Adding intros, turnarounds, and endings to the 12-bar blues progression" (For
 * Dummies); of `falling line` and `cycle` after Wikipedia, "V–IV–I turnaround"; `halves` after "Blues turnarounds
 * (part 1)", a guitar magazine's lesson; `passing` and `falling six` after "Nuggets", figures 3 and 4, another's;
 * `tritones` and `half swap` after "Fundamentals of Jazz Improvisation", ch. 13; `minor six` after a lesson on the
 * minor blues. `contrary` after "Intro/turnaround #1", a piano lesson. Others, and the bass lines: common practice, no
 * source.
 */
const FIGURES = [
  major('plain', ['I7 - - -', 'I7 - V7 -'], ['1 3 5 6', '1 b6 5 7']),
  major('flat six', ['I7 - - -', 'bVI7 - V7 -'], ['1 3 5 6', 'b6 b6 5 7']),
  major('falling line', ['I I7 IV/5 iv/5', 'I bVI7 V7 -'], ['1 1 1 1', '1 b6 5 5']),
  major('parallel sixths', ['I I7 io7 iv/5', 'I bVI7 V7 -'], ['1 1 1 1', '1 b6 5 5']),
  major('rising bass', ['I I7/3 IV #ivo7', 'I/5 VI7 II7 V7'], ['1 3 4 #4', '5 6 2 5']),
  major('contrary', ['I I7/3 IV bVI7/b7', 'I/5 - V7 -'], ['1 3 4 #4', '5 5 5 7']),
  major('halves', ['I7 - IV7 -', 'I7/5 - V7 -'], ['1 3 4 #4', '5 b6 5 7']),
  major('passing', ['I7 - #io7 -', 'ii7 - V7 -'], ['1 3 #1 3', '2 b6 5 7']),
  major('cycle', ['I7 - VI7 -', 'II7 - V7 -'], ['1 b7 6 #1', '2 b6 5 7']),
  major('cycle with two', ['I7 - VI7 -', 'ii7 - V7 -'], ['1 b7 6 #1', '2 b6 5 b2']),
  major('falling six', ['I7 - VI7/5 -', 'bVI7/5 - V7/5 -'], ['1 1 3 3', 'b3 b3 2 2']),
  major('tritones', ['I7 - bIII7 -', 'II7 - bII7 -'], ['1 5 b3 b7', '2 6 b2 7']),
  major('half swap', ['I7 - VI7 -', 'ii7 - bII7 -'], ['1 b7 6 b3', '2 2 b2 7']),
  major('six and flat six', ['I7 - VI7 -', 'bVI7 - V7 -'], ['1 b7 6 6', 'b6 b6 5 5']),
  major('from the three', ['iii7 - VI7 -', 'ii7 - V7 -'], ['3 b7 6 #1', '2 b6 5 b2']),
  minor('minor six', ['i7 - - -', 'bVI7 - V7 -'], ['1 b3 5 b7', 'b6 b6 5 7']),
  minor('minor halves', ['i7 - iv7 -', 'i7/5 - V7b9 -'], ['1 b3 4 #4', '5 b6 5 7']),
  minor('minor line', ['i imaj7 i7 i6', 'bVI7 - V7 -'], ['1 1 1 1', 'b6 b6 5 5']),
  minor('minor thirds', ['i7 - bIII7 -', 'bVI7 - V7 -'], ['1 1 b3 b3', 'b6 b6 5 5']),
  minor('minor cycle', ['i7 - vim7b5 -', 'iim7b5 - V7b9 -'], ['1 b7 6 b3', '2 b6 5 b2']),
] as const satisfies readonly TurnaroundFigure[];

export type TurnaroundId = (typeof FIGURES)[number]['id'];

export const TURNAROUND_FIGURES: readonly TurnaroundFigure[] = FIGURES;

/** What a chorus in minor turns around with, whatever its feel; the first is the usual one. */
export const MINOR_TURNAROUNDS: readonly TurnaroundId[] = [
  'minor six',
  'minor halves',
  'minor line',
  'minor thirds',
  'minor cycle',
];

/** A figure by its name. */
export const turnaroundFigure = (id: TurnaroundId): TurnaroundFigure => {
  const figure = TURNAROUND_FIGURES.find((each) => each.id === id);
  if (figure === undefined) throw new RangeError(`No turnaround is called ${id}`);
  return figure;
};
