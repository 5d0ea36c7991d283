import type { DrumPattern } from '../feels/drum-pattern';
import { DRUM_KEYS, type DrumLane } from '../score/drum-kit';
import { fitSteps, readSteps, type Step, type StepBar, stretchSteps, ticksOf } from '../score/steps';
import type { Random } from '../theory/random';
import { isHalfTime, type Passage } from './passage';
import type { Stroke } from './vary-time';

/** The written patterns of the drums in the meter and at the speed of a passage. */

const GHOST_CHANCE = 0.35;
const EXTRA_CHANCE = 0.3;

/** What `?` and `!` become this time; null when they stay silent. */
const resolveMark = (random: Random, mark: string): string | null => {
  if (mark === '?') return random() < GHOST_CHANCE ? 'g' : null;
  if (mark === '!') return random() < EXTRA_CHANCE ? 'x' : null;
  return mark === '.' ? null : mark;
};

const isLane = (name: string): name is DrumLane => name in DRUM_KEYS;

/** Lanes that move to half the speed in half time; the hand that keeps the time, and ghosts, go on as they are. */
const HALVED: ReadonlySet<DrumLane> = new Set(['kick', 'snare', 'stick', 'slap', 'foot']);
const GHOSTS = 'g?';

/** Halves of a beat that is divided in three: the hand plays all of them, where the feel does not swing anyhow. */
const inThirds = (bar: StepBar): StepBar =>
  bar.flatMap((step) => {
    if (step.of !== 2) return [step];
    const thirds = step.step === 0 ? [0] : [1, 2];
    return thirds.map((third) => ({ ...step, step: third, of: 3 }));
  });

/** Below this ratio of long to short a feel is a straight one. */
const STRAIGHT_BELOW = 1.5;

const BACKBEATS: readonly DrumLane[] = ['snare', 'stick', 'slap'];

/**
 * How a pattern fits bars of three: one with a backbeat has it on 2 and 3, a figure without one keeps its way out, since
 * the accents of its second beat twice would be three against nothing.
 */
const fitOf = ({ grid }: Passage, pattern: DrumPattern): 'time' | 'line' => {
  const isBackbeat = ({ beat, step, mark }: Step) => beat === 1 && step === 0 && 'xX'.includes(mark);
  const backbeat = BACKBEATS.some((lane) => readSteps(pattern[lane] ?? '.')[0]?.some(isBackbeat));
  return grid.beats === 3 && !backbeat ? 'line' : 'time';
};

const laneSteps = (passage: Passage, pattern: DrumPattern, lane: DrumLane, bar: number): StepBar => {
  const { grid, feel } = passage;
  const text = pattern[lane] ?? '.';
  const bars = readSteps(text);
  const hand = lane === 'hat' || lane === 'ride';
  const straight = grid.compound && feel.swing !== 'by tempo' && feel.swing < STRAIGHT_BELOW;
  const fitted = (index: number) => {
    const steps = fitSteps(
      bars[index % bars.length] ?? [],
      grid.beats,
      hand ? 'hand' : fitOf(passage, pattern),
    );
    return hand && straight ? inThirds(steps) : steps;
  };
  if (!isHalfTime(passage) || !HALVED.has(lane)) return fitted(bar);
  const struck = fitted(Math.floor(bar / 2)).filter(({ mark }) => !GHOSTS.includes(mark));
  const ghosts = fitted(bar).filter(({ mark }) => GHOSTS.includes(mark));
  return [...stretchSteps(struck, grid.beats, bar % 2 === 1), ...ghosts];
};

/** The strokes of one bar of a pattern, in ticks from the bar's start; `?` and `!` are decided by chance. */
export const patternStrokes = (
  random: Random,
  passage: Passage,
  pattern: DrumPattern,
  bar: number,
): readonly Stroke[] =>
  Object.keys(pattern).flatMap((lane) => {
    if (!isLane(lane)) return [];
    return laneSteps(passage, pattern, lane, bar).flatMap((step) => {
      const mark = resolveMark(random, step.mark);
      return mark === null ? [] : [{ at: ticksOf(passage.grid, step), lane, mark }];
    });
  });
