import * as v from 'valibot';
import { cutText } from '../theory/kept-text';
import type { Memory } from './schedule';

/** What can be practised: one thing, short enough to be judged by itself. */
export type Exercise =
  | { readonly kind: 'bend'; readonly sound: string; readonly harpKind: string }
  /** A chord tone over a chord of the form, by its Roman numeral. */
  | { readonly kind: 'tone'; readonly degree: string; readonly roman: string }
  /** A phrase of the library. */
  | { readonly kind: 'phrase'; readonly phrase: string }
  /** A song of the book at a tempo. */
  | { readonly kind: 'song'; readonly song: string; readonly tempo: number }
  | { readonly kind: 'scale'; readonly scale: string; readonly position: number };

/** Something to be practised, under a name, with what is known of it. */
export interface PracticeItem {
  readonly id: string;
  readonly name: string;
  readonly exercise: Exercise;
  /** Null as long as it was never practised. */
  readonly memory: Memory | null;
}

/** The id of an exercise: the same thing is one item, however often it comes up. */
export const itemId = (exercise: Exercise): string => {
  switch (exercise.kind) {
    case 'bend':
      return `bend ${exercise.sound} ${exercise.harpKind}`;
    case 'tone':
      return `tone ${exercise.degree} ${exercise.roman}`;
    case 'phrase':
      return `phrase ${exercise.phrase}`;
    case 'song':
      return `song ${exercise.song}`;
    default:
      return `scale ${exercise.scale} ${exercise.position}`;
  }
};

const short = v.pipe(v.string(), v.minLength(1), v.maxLength(300));
/** Before 1970 too, where a clock has lost its time. */
const day = v.pipe(v.number(), v.integer(), v.minValue(-1_000_000), v.maxValue(1_000_000));
const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1_000_000));

const EXERCISE = v.variant('kind', [
  v.object({ kind: v.literal('bend'), sound: short, harpKind: short }),
  v.object({ kind: v.literal('tone'), degree: short, roman: short }),
  v.object({ kind: v.literal('phrase'), phrase: short }),
  v.object({
    kind: v.literal('song'),
    song: short,
    tempo: v.pipe(v.number(), v.minValue(20), v.maxValue(400)),
  }),
  v.object({
    kind: v.literal('scale'),
    scale: short,
    position: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(12)),
  }),
]);

const MEMORY = v.object({
  stability: v.pipe(v.number(), v.minValue(0.001), v.maxValue(36_500)),
  difficulty: v.pipe(v.number(), v.minValue(1), v.maxValue(10)),
  last: day,
  due: day,
  times: count,
  lapses: count,
  passes: count,
});

const ITEM = v.object({ name: short, exercise: EXERCISE, memory: v.unknown() });

/** An item read from outside, and what had to be left out. */
export interface ReadPracticeItem {
  readonly item: PracticeItem | null;
  readonly problems: readonly string[];
}

/** Reads an item from storage or a file. Never throws. */
export const readPracticeItem = (value: unknown): ReadPracticeItem => {
  const read = v.safeParse(ITEM, value);
  if (!read.success)
    return {
      item: null,
      problems: ['Something that was to be practised could not be read and was left out.'],
    };
  const { name, exercise, memory: kept } = read.output;
  const memory = v.safeParse(MEMORY, kept);
  return {
    item: { id: itemId(exercise), name, exercise, memory: memory.success ? memory.output : null },
    problems:
      memory.success || kept === null
        ? []
        : [`What was known of “${cutText(name, 40)}” could not be read: it begins anew.`],
  };
};

const lastOf = ({ memory }: PracticeItem): number => memory?.last ?? Number.NEGATIVE_INFINITY;

/** Of two of the same exercise, here and in a file, the one that was practised last. */
export const joinPractice = (present: PracticeItem, incoming: PracticeItem): PracticeItem =>
  lastOf(incoming) > lastOf(present) ? incoming : present;
