import type { BeatGrid } from '../score/grid';
import type { NoteDraft } from '../score/note';
import { fitSteps, readSteps, type StepBar, stretchSteps, ticksOf } from '../score/steps';
import { pick, type Random } from '../theory/random';
import { BASS_HIGH, BASS_LOW, bassRoot, homePitch, intoRegister, pickApproach } from './bass-register';
import { type ChordShape, chordShape } from './chord-scale';
import type { Segment } from './passage';

/** Velocities of pattern notes: on strong and weak beats, and short notes between the beats. */
const STRONG = 92;
const WEAK = 86;
const BETWEEN = 72;

/** The pitch a chord-step mark asks for above a root; null for marks that are no chord step. */
const stepPitch = (mark: string, root: number, shape: ChordShape): number | null => {
  const sixth = shape.scale.find((step) => step > shape.fifth && step < 10) ?? shape.fifth;
  const steps: Readonly<Record<string, number>> = {
    R: 0,
    m: shape.third - 1,
    '3': shape.third,
    '5': shape.fifth,
    '6': sixth,
    '7': shape.seventh ?? 12,
    '8': 12,
    b: root + shape.fifth - 12 >= BASS_LOW ? shape.fifth - 12 : shape.fifth,
  };
  const step = steps[mark];
  return step === undefined ? null : root + step;
};

/** An octave up; a note that has none is struck again, since one an octave down would break the line in two. */
const octaveAway = (pitch: number): number => (pitch + 12 <= BASS_HIGH ? pitch + 12 : pitch);

/** The chord's third or seventh, whichever is nearer, in place of a note that is the next chord's root before its time. */
const pickTone = ({ chord }: Segment, from: number): number => {
  const { third, seventh } = chordShape(chord);
  const root = homePitch(chord.root);
  const steps = [third, seventh ?? 12, 12].map((step) => intoRegister(root + step));
  return steps.reduce(
    (a, b) => (Math.abs(b - from) < Math.abs(a - from) ? b : a),
    intoRegister(root + third),
  );
};

/** A way back to the same chord's root: its fifth, sixth or seventh near by, since half steps only lead elsewhere. */
const pickReturn = (random: Random, segment: Segment, last: number): number => {
  const root = homePitch(segment.chord.root);
  const shape = chordShape(segment.chord);
  const marks = ['5', '5', '6', '7', 'b'];
  const near = marks
    .map((mark) => intoRegister(stepPitch(mark, root, shape) ?? root))
    .filter((pitch) => pitch !== last && Math.abs(pitch - last) <= 9);
  return near.length === 0 ? root : pick(random, near);
};

const soundOf = (random: Random, mark: string, segment: Segment, last: number): number => {
  if (mark === '^') return octaveAway(last);
  const following = segment.next ?? segment.chord;
  const target = bassRoot(following);
  if (mark === 'A' && following.symbol === segment.chord.symbol) return pickReturn(random, segment, last);
  const under = { root: segment.chord.root, shape: chordShape(segment.chord) };
  if (mark === 'A') return pickApproach(random, last, { pitch: target, shape: chordShape(following) }, under);
  if (mark === 'a') return intoRegister(target + (last > target ? 2 : -2));
  return intoRegister(stepPitch(mark, homePitch(segment.chord.root), chordShape(segment.chord)) ?? last);
};

interface Mark {
  readonly at: number;
  readonly mark: string;
  /** True for steps between the beats. */
  readonly between: boolean;
  readonly strong: boolean;
}

/** The marks of a bar in ticks, with a root wherever a chord starts and the pattern is silent or holding. */
const marksOf = (grid: BeatGrid, bar: StepBar, segments: readonly Segment[]): readonly Mark[] => {
  const barAt = segments[0]?.at ?? 0;
  const starts = segments.filter((segment, i) => segment.change || i > 0);
  const written = bar.map((step): Mark => {
    const at = barAt + ticksOf(grid, step);
    const begins = starts.some((segment) => Math.abs(segment.at - at) < 1);
    return { at, mark: begins ? 'root' : step.mark, between: step.step > 0, strong: step.beat % 2 === 0 };
  });
  const missing = starts
    .filter((segment) => !written.some(({ at }) => Math.abs(segment.at - at) < 1))
    .map((segment): Mark => ({ at: segment.at, mark: 'root', between: false, strong: true }));
  return [...written, ...missing].sort((a, b) => a.at - b.at).filter(({ mark }) => mark !== '-');
};

/** What a pattern has on a beat. */
const markOn = (bar: StepBar, beat: number): string =>
  bar.find((step) => step.beat === beat && step.step === 0)?.mark ?? '.';

/**
 * A bar of two beats has the pattern's strong ones, or its way out where the second is held or says the first again: of root
 * and fifth in turn the root alone would be left.
 * Two-bar patterns go on while the chord lasts and begin again with a new one; a chord of one bar gets the first. In half
 * time every bar takes two.
 */
const barOfRiff = (riff: Riff, segment: Segment, beats: number): StepBar => {
  const bars = readSteps(riff.text);
  const held = riff.halfTime ? Math.floor(segment.barsHeld / 2) : segment.barsHeld;
  const bar = bars[held % bars.length];
  if (bar === undefined) throw new RangeError('A bass pattern needs at least one bar');
  const strong = !`-.${markOn(bar, 0)}`.includes(markOn(bar, 2));
  const fitted = fitSteps(bar, beats, strong ? 'bass' : 'line');
  if (!riff.halfTime) return fitted;
  const [first, ...rest] = stretchSteps(fitted, beats, segment.barsHeld % 2 === 1);
  return first === undefined
    ? []
    : [{ ...first, mark: '-.'.includes(first.mark) ? 'R' : first.mark }, ...rest];
};

/** A written bass line, and whether it goes at half its speed. */
export interface Riff {
  readonly text: string;
  readonly halfTime: boolean;
}

/** Turns the last beat into an approach where the chord changes after it, more often than not. */
const leadingOut = (random: Random, bar: StepBar, segments: readonly Segment[]): StepBar => {
  const leaving = segments.at(-1);
  const changes = leaving?.next != null && leaving.next.symbol !== leaving.chord.symbol;
  const lastBeat = Math.max(...bar.map((step) => step.beat));
  if (!changes || lastBeat < 1 || random() < 0.4) return bar;
  const last = bar.findLastIndex((step) => step.beat === lastBeat && !'.-^'.includes(step.mark));
  return bar.map((step, i) => (i === last ? { ...step, mark: 'A' } : step));
};

/** The last note before a chord changes, which is led to: not its root, or nothing would be left to arrive at. */
const awayFromNext = (
  random: Random,
  pitch: number,
  before: number,
  { segment, strong }: { readonly segment: Segment; readonly strong: boolean },
): number => {
  const { next, chord } = segment;
  if (next === null || next.bass === chord.bass || pitch % 12 !== next.bass) return pitch;
  if (strong) {
    const tone = pickTone(segment, pitch);
    return tone % 12 === next.bass ? pitch : tone;
  }
  const target = { pitch: bassRoot(next), shape: chordShape(next) };
  return pickApproach(random, before, target, { root: chord.root, shape: chordShape(chord) });
};

/**
 * Plays one bar of a bass pattern over its chords. Short notes between the beats are lighter and shorter than the
 * rest; long ones (3+3+2 figures) carry the pattern and are not.
 */
export const playRiff = (
  random: Random,
  grid: BeatGrid,
  riff: Riff,
  segments: readonly Segment[],
): readonly NoteDraft[] => {
  const first = segments[0];
  if (first === undefined) return [];
  const end = segments.reduce((sum, segment) => sum + segment.length, first.at);
  const bar = leadingOut(random, barOfRiff(riff, first, grid.beats), segments);
  const marks = marksOf(grid, bar, segments);
  let last = bassRoot(first.chord);
  return marks.flatMap(({ at, mark, between, strong }, i) => {
    if (mark === '.') return [];
    const segment = segments.findLast((each) => each.at <= at + 1) ?? first;
    const until = segment.at + segment.length - 1;
    const leaves = marks.slice(i + 1).every((each) => each.mark === '.' || each.at >= until);
    const asked = mark === 'root' ? bassRoot(segment.chord) : soundOf(random, mark, segment, last);
    const onBeat = strong && !between;
    last = leaves && mark !== 'root' ? awayFromNext(random, asked, last, { segment, strong: onBeat }) : asked;
    const room = (marks[i + 1]?.at ?? end) - at;
    const short = between && room < grid.beatTicks * 0.6;
    const velocity = short ? BETWEEN : strong && !between ? STRONG : WEAK;
    return [{ at, length: room * (short ? 0.75 : 0.9), pitch: last, velocity }];
  });
};
