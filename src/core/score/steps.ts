import { type BeatGrid, stepTicks } from './grid';

/** One mark of a pattern: step `step` of `of` equal names in beat `beat` (what a name means in ticks is the grid's). */
export interface Step {
  readonly beat: number;
  readonly step: number;
  readonly of: number;
  readonly mark: string;
}

/** The steps of one bar, in order. */
export type StepBar = readonly Step[];

/**
 * Which beats of a four-beat pattern a shorter bar takes: `time` has the backbeat on every beat but the first (a waltz's
 * accompaniment, common practice, no source), `hand` goes on with the pattern, `line` keeps the way out, and `bass` its
 * two strong beats.
 */
const KEPT_BEATS = {
  time: { 2: [0, 1], 3: [0, 1, 1] },
  hand: { 2: [0, 1], 3: [0, 1, 2] },
  line: { 2: [0, 3], 3: [0, 1, 3] },
  bass: { 2: [0, 2], 3: [0, 1, 3] },
} as const;

const parseSteps = (text: string): readonly StepBar[] =>
  text.split('|').map((bar) => {
    const beats = bar.trim().split(/\s+/);
    if (beats[0] === '') throw new RangeError(`A pattern needs marks in every bar: "${text}"`);
    return beats.flatMap((marks, beat) =>
      [...marks].map((mark, step) => ({ beat, step, of: marks.length, mark })),
    );
  });

/** Patterns read before: a chorus asks for the same few dozen again and again. */
const known = new Map<string, readonly StepBar[]>();

/**
 * Reads a pattern: bars separated by `|`, beats by blanks, one character a step; the number of characters in a beat
 * says how it divides. Throws RangeError on an empty bar.
 *
 * @example
 * // Three thirds of the first beat, then the second beat undivided.
 * readSteps('x.o x')[0].length // 4
 */
export const readSteps = (text: string): readonly StepBar[] => {
  const read = known.get(text) ?? parseSteps(text);
  known.set(text, read);
  return read;
};

/** Fits a four-beat bar to a meter: shorter bars take some of its beats, longer ones begin again. */
export const fitSteps = (bar: StepBar, beats: number, kind: keyof typeof KEPT_BEATS): StepBar => {
  if (beats === 4) return bar;
  const kept: readonly number[] =
    beats === 2 || beats === 3 ? KEPT_BEATS[kind][beats] : Array.from({ length: beats }, (_, i) => i % 4);
  return kept.flatMap((from, beat) =>
    bar.filter((step) => step.beat === from).map((step) => ({ ...step, beat })),
  );
};

/** Where a step stands in its beat to an ear that counts halves and quarters: thirds leave the middle to the last. */
const countedShare = ({ step, of }: Step): number => (of === 3 ? step / 4 : step / of);

/**
 * One of the two bars that a bar takes in half time: its beats last twice as long, and what stood between them stands on
 * beats and their halves, so that a backbeat on 2 and 4 becomes one on 3.
 * @param second the bar's second half.
 */
export const stretchSteps = (bar: StepBar, beats: number, second: boolean): StepBar =>
  bar.flatMap((step) => {
    const at = 2 * (step.beat + countedShare(step)) - (second ? beats : 0);
    const beat = Math.floor(at);
    if (at < 0 || beat >= beats) return [];
    const inside = Math.round((at - beat) * 4);
    const [place, of] = inside === 0 ? [0, 1] : inside === 2 ? [1, 2] : [inside, 4];
    return [{ beat, step: place, of, mark: step.mark }];
  });

/** Ticks from the bar's start to a step. */
export const ticksOf = (grid: BeatGrid, step: Step): number =>
  step.beat * grid.beatTicks + stepTicks(grid, step.step, step.of);

/** The strokes of a bar of hits, which is written in the meter's own beats. */
export const hitSteps = (hits: string, beats: number): StepBar =>
  (readSteps(hits)[0] ?? []).filter((step) => step.beat < beats && step.mark !== '.');
