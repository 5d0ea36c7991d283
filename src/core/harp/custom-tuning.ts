import { isRecord } from '../theory/is-record';
import { keptText, LONGEST_NAME } from '../theory/kept-text';
import { HOLES } from './build-harp';
import type { Breath, Tuning } from './harp';
import { RICHTER } from './tunings';

/** Reeds accepted, in semitones from the key note: two octaves below to five above. */
export const REED_RANGE = { low: -24, high: 60 } as const;

/** A tuning read from outside and what had to be repaired. */
export interface ParsedTuning {
  readonly tuning: Tuning;
  /** Sentences for the player; empty when all was well. */
  readonly problems: readonly string[];
}

const isReed = (value: unknown): value is number =>
  typeof value === 'number' && Number.isInteger(value) && value >= REED_RANGE.low && value <= REED_RANGE.high;

/** What to say where a name was cut to length; nothing where it was not. */
export const cutName = (value: unknown, what: string): readonly string[] =>
  typeof value === 'string' && value.trim().length > LONGEST_NAME
    ? [`The name of the ${what} was longer than ${LONGEST_NAME} letters and was cut.`]
    : [];

/** The standard reed of a hole; above hole 10 the layout goes on an octave higher every three holes. */
const standardReed = (breath: Breath, hole: number): number =>
  RICHTER[breath][hole - 1] ?? standardReed(breath, hole - 3) + 12;

const holesOf = (rows: readonly unknown[]): number => {
  const longest = Math.max(...rows.map((row) => (Array.isArray(row) ? row.length : 0)));
  return Math.min(HOLES.most, Math.max(HOLES.fewest, longest));
};

interface ReadRow {
  readonly reeds: readonly number[];
  readonly problems: readonly string[];
}

const readRow = (value: unknown, breath: Breath, holes: number): ReadRow => {
  if (!Array.isArray(value)) {
    const reeds = Array.from({ length: holes }, (_, i) => standardReed(breath, i + 1));
    return {
      reeds,
      problems: [`The ${breath} reeds could not be read; the standard ones stand in their place.`],
    };
  }
  const given: readonly unknown[] = value;
  const replaced: number[] = [];
  const reeds = Array.from({ length: holes }, (_, i) => {
    const reed = given[i];
    if (isReed(reed)) return reed;
    replaced.push(i + 1);
    return standardReed(breath, i + 1);
  });
  const problems = [
    ...(replaced.length === 0
      ? []
      : [
          `No usable ${breath} reed in ${replaced.length === 1 ? 'hole' : 'holes'} ${replaced.join(', ')}; the standard ${replaced.length === 1 ? 'one stands' : 'ones stand'} there. Check it by ear.`,
        ]),
    ...(given.length > holes ? [`The ${breath} reeds above hole ${holes} were left out.`] : []),
  ];
  return { reeds, problems };
};

/**
 * Reads a tuning from storage or a link. Never throws: what cannot be read is replaced by the standard layout, reed
 * by reed, and reported.
 *
 * @example
 * const { tuning, problems } = parseTuning({ ...RICHTER, blow: RICHTER.blow.with(1, 'four') });
 * tuning.blow.slice(0, 3) // [0, 4, 7]
 * problems // ['No usable blow reed in hole 2; the standard one stands there. Check it by ear.']
 */
export const parseTuning = (value: unknown): ParsedTuning => {
  if (!isRecord(value)) {
    return {
      tuning: { id: 'own', name: 'My tuning', blow: RICHTER.blow, draw: RICHTER.draw },
      problems: ['The tuning could not be read at all; the standard layout stands in its place.'],
    };
  }
  const holes = holesOf([value.blow, value.draw]);
  const blow = readRow(value.blow, 'blow', holes);
  const draw = readRow(value.draw, 'draw', holes);
  const name = keptText(value.name);
  return {
    tuning: {
      id: keptText(value.id) || 'own',
      name: name || 'My tuning',
      blow: blow.reeds,
      draw: draw.reeds,
    },
    problems: [
      ...(name === '' ? ['The tuning had no name; it is called "My tuning" now.'] : []),
      ...cutName(value.name, 'tuning'),
      ...blow.problems,
      ...draw.problems,
    ],
  };
};

/** Something about a hole that is allowed but unlikely to be meant. */
export interface TuningMark {
  readonly hole: number;
  readonly kind: 'equal reeds' | 'wide hole' | 'falling row' | 'wide step' | 'extreme pitch';
  /** One sentence for the player. */
  readonly sentence: string;
}

/**
 * Where marks begin, in semitones (common practice, no source): no usual layout has more than a fourth in a hole,
 * neighbouring reeds of one row further apart than a fifth, or reeds beyond these pitches above the key note.
 */
const USUAL = { hole: 5, step: 7, low: -12, high: 48 } as const;

const holeMarks = (tuning: Tuning, index: number): readonly TuningMark[] => {
  const hole = index + 1;
  const blow = tuning.blow[index] ?? 0;
  const draw = tuning.draw[index] ?? 0;
  const apart = Math.abs(blow - draw);
  if (apart === 0) {
    const sentence = `Hole ${hole} has the same note on blow and draw, so it has no bend and no overbend.`;
    return [{ hole, kind: 'equal reeds', sentence }];
  }
  if (apart <= USUAL.hole) return [];
  const sentence = `The reeds of hole ${hole} are ${apart} semitones apart; bends that deep are not to be expected.`;
  return [{ hole, kind: 'wide hole', sentence }];
};

const rowMarks = (tuning: Tuning, breath: Breath, index: number): readonly TuningMark[] => {
  const hole = index + 1;
  const reed = tuning[breath][index] ?? 0;
  const below = tuning[breath][index - 1];
  const marks: TuningMark[] = [];
  if (below !== undefined && reed < below) {
    const sentence = `${breath === 'blow' ? 'Blow' : 'Draw'} ${hole} is lower than ${breath} ${hole - 1}.`;
    marks.push({ hole, kind: 'falling row', sentence });
  }
  if (below !== undefined && reed - below > USUAL.step) {
    const sentence = `${breath === 'blow' ? 'Blow' : 'Draw'} ${hole} is ${reed - below} semitones above ${breath} ${hole - 1}.`;
    marks.push({ hole, kind: 'wide step', sentence });
  }
  if (reed < USUAL.low || reed > USUAL.high) {
    const sentence = `${breath === 'blow' ? 'Blow' : 'Draw'} ${hole} lies far outside the range of such harps.`;
    marks.push({ hole, kind: 'extreme pitch', sentence });
  }
  return marks;
};

/** What looks unintended in a tuning, hole by hole. The tuning works all the same. */
export const markTuning = (tuning: Tuning): readonly TuningMark[] =>
  tuning.blow.flatMap((_, index) => [
    ...holeMarks(tuning, index),
    ...rowMarks(tuning, 'blow', index),
    ...rowMarks(tuning, 'draw', index),
  ]);

/** The tuning with one reed changed. Throws RangeError on a hole it does not have or a reed out of `REED_RANGE`. */
export const withReed = (tuning: Tuning, breath: Breath, hole: number, semitones: number): Tuning => {
  if (tuning[breath][hole - 1] === undefined) {
    throw new RangeError(`A hole is 1 to ${tuning[breath].length}, got ${hole}`);
  }
  if (!isReed(semitones)) {
    throw new RangeError(`A reed is ${REED_RANGE.low} to ${REED_RANGE.high} semitones, got ${semitones}`);
  }
  return { ...tuning, [breath]: tuning[breath].with(hole - 1, semitones) };
};

/** The tuning with holes added at the top (as the standard layout goes on) or taken away. Throws outside 10–14. */
export const withHoles = (tuning: Tuning, holes: number): Tuning => {
  if (!(Number.isInteger(holes) && holes >= HOLES.fewest && holes <= HOLES.most)) {
    throw new RangeError(`A harp has ${HOLES.fewest} to ${HOLES.most} holes, got ${holes}`);
  }
  const row = (breath: Breath): readonly number[] =>
    Array.from({ length: holes }, (_, i) => tuning[breath][i] ?? standardReed(breath, i + 1));
  return { ...tuning, blow: row('blow'), draw: row('draw') };
};
