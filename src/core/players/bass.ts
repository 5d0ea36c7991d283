import { type NoteDraft, noteEvent } from '../score/note';
import type { NoteEvent } from '../score/score';
import { hitSteps, ticksOf } from '../score/steps';
import { countWhile } from '../theory/count-while';
import { createRandom, type Random, seedFrom } from '../theory/random';
import { patternOfBars } from './bass-plan';
import { bassRoot, homePitch, pickApproach, withoutLongLeaps } from './bass-register';
import { chordShape } from './chord-scale';
import { isHalfTime, type Passage, PLAIN_SHAPE, type Segment, segmentsOf } from './passage';
import { playRiff } from './riff';
import { playTurnaroundBar } from './turnaround-bass';
import { type BassBar, varyRhythm } from './vary-rhythm';
import { walk } from './walking';
import { wandering } from './wander';

const WALKED = { strong: 92, weak: 90, skip: 58 } as const;
const HIT = 98;
/** How far the hand wanders from its loudness. */
const SWAY = 5;

/** A light repeated note on the off-beat before the next beat, now and then. */
const withSkips = (
  random: Random,
  { grid }: Passage,
  notes: readonly NoteDraft[],
  chance: number,
): readonly NoteDraft[] => {
  const off = ticksOf(grid, { beat: 0, step: 1, of: 2, mark: '' });
  return notes.flatMap((note) => {
    const oneBeat = note.length > grid.beatTicks * 0.8 && note.length < grid.beatTicks * 1.2;
    if (!oneBeat || random() >= chance) return [note];
    const length = (grid.beatTicks - off) * 0.7;
    const skip = { at: note.at + off, length, pitch: note.pitch, velocity: WALKED.skip };
    return [{ ...note, length: off * 0.8 }, skip];
  });
};

/** Whether a two-beat line sounds a beat: the first, the middle of the bar, and a way out now and then. */
const keptInTwo = (random: Random, beat: number, beats: number): boolean =>
  beat === 0 || (beat === 2 && beats === 4) || (beat === beats - 1 && random() < 0.3);

/** How often the middle of a bar in two is the chord's fifth, the note that goes with a root (common practice, no source). */
const FIFTH_CHANCE = 0.65;

/** The middle note of a bar in two: mostly the fifth near the root; neither the note before nor what the next bar begins with. */
const middleInTwo = (random: Random, { chord, next }: Segment, from: number, walked: number): number => {
  const { fifth, third } = chordShape(chord);
  const near = (step: number): number => {
    const low = homePitch((chord.root + step) % 12);
    return Math.abs(low + 12 - from) < Math.abs(low - from) ? low + 12 : low;
  };
  const inOrder = [...(random() < FIFTH_CHANCE ? [] : [walked]), near(fifth), near(0), near(third)];
  const leads = next !== null && next.bass !== chord.bass ? next.bass : null;
  return inOrder.find((pitch) => pitch !== from && pitch % 12 !== leads) ?? walked;
};

const walkNotes = (
  random: Random,
  passage: Passage,
  segments: readonly Segment[],
  two: boolean,
): readonly NoteDraft[] => {
  const { beatTicks } = passage.grid;
  const level = passage.shapes[segments[0]?.bar ?? 0]?.level ?? 1;
  const notes = walk(random, segments, passage.grid).flatMap((pitches, i) => {
    const segment = segments[i];
    if (segment === undefined) return [];
    const kept = pitches
      .map((pitch, beat) => ({ pitch, beat }))
      .filter(({ beat }) => !two || keptInTwo(random, beat, pitches.length))
      .map(({ pitch, beat }) => {
        const middle = two && beat === 2 && pitches.length === 4;
        return middle
          ? { pitch: middleInTwo(random, segment, pitches[0] ?? pitch, pitch), beat }
          : { pitch, beat };
      });
    return kept.map(({ pitch, beat }, k) => {
      const until = kept[k + 1]?.beat ?? segment.length / beatTicks;
      const velocity = (beat % 2 === 0 ? WALKED.strong : WALKED.weak) - (two ? 4 : 0);
      return {
        at: segment.at + beat * beatTicks,
        length: (until - beat) * beatTicks * 0.93,
        pitch,
        velocity,
      };
    });
  });
  return withSkips(random, passage, notes, 0.05 + level * 0.06);
};

/** A note on the last off-beat of a bar of hits that leads into the next. */
const pickUp = (
  random: Random,
  { grids, grid }: Passage,
  segments: readonly Segment[],
): readonly NoteDraft[] => {
  const [first, last] = [segments[0], segments.at(-1)];
  if (first === undefined || last?.next == null) return [];
  const off = { beat: grid.beats - 1, step: 1, of: 2, mark: '' };
  const at = first.at + ticksOf(grids.drums, off);
  const length = (grid.beats * grid.beatTicks - ticksOf(grids.drums, off)) * 0.8;
  const under = { root: last.chord.root, shape: chordShape(last.chord) };
  const target = { pitch: bassRoot(last.next), shape: chordShape(last.next) };
  return [
    { at, length, pitch: pickApproach(random, bassRoot(last.chord), target, under), velocity: WALKED.weak },
  ];
};

const hitNotes = (random: Random, passage: Passage, segments: readonly Segment[]): readonly NoteDraft[] => {
  const first = segments[0];
  if (first === undefined) return [];
  const end = segments.reduce((sum, segment) => sum + segment.length, first.at);
  const struck = hitSteps(passage.shapes[first.bar]?.hits ?? 'x', passage.grid.beats)
    .map((step) => ({ at: first.at + ticksOf(passage.grids.drums, step), held: step.mark === 'h' }))
    .filter(({ at }) => at < end);
  const hits = struck.map(({ at, held }, i) => {
    const chord = (segments.findLast((segment) => segment.at <= at + 1) ?? first).chord;
    const room = (struck[i + 1]?.at ?? end) - at;
    const length = held ? room : Math.min(room, passage.grid.beatTicks * 0.45);
    return { at, length, pitch: bassRoot(chord), velocity: HIT };
  });
  const lead = passage.shapes[first.bar]?.fill === 'pick-up' ? pickUp(random, passage, segments) : [];
  return [...hits, ...lead.filter(({ at }) => at < end)];
};

/** Groups neighbours that share a label. */
const runsBy = <T>(items: readonly T[], label: (item: T) => unknown): readonly (readonly T[])[] => {
  const runs: T[][] = [];
  let before: unknown;
  for (const item of items) {
    const now = label(item);
    const run = runs.at(-1);
    if (run !== undefined && now === before) run.push(item);
    else runs.push([item]);
    before = now;
  }
  return runs;
};

const playBars = (random: Random, passage: Passage, segments: readonly Segment[]): readonly NoteDraft[] => {
  const bars = runsBy(segments, (segment) => segment.bar);
  const patterns = patternOfBars(random, passage, bars);
  const played = bars.map((bar, i) => ({ bar, pattern: patterns[i] ?? 'walk' }));
  const notes = runsBy(played, ({ pattern }) => pattern).flatMap((run) => {
    const pattern = run[0]?.pattern ?? 'walk';
    if (pattern === 'walk' || pattern === 'two') {
      return walkNotes(
        random,
        passage,
        run.flatMap(({ bar }) => bar),
        pattern === 'two' || isHalfTime(passage),
      );
    }
    if ('pitches' in pattern)
      return run.flatMap(({ bar }) => playTurnaroundBar(passage, pattern.pitches, bar));
    const riff = { text: pattern.riff, halfTime: isHalfTime(passage) };
    return run.flatMap(({ bar }) => playRiff(random, passage.grid, riff, bar));
  });
  const starts = bars.map((bar) => bar[0]?.at ?? 0);
  const lines: NoteDraft[][] = bars.map(() => []);
  for (const note of notes)
    lines[countWhile(starts.length, (i) => (starts[i] ?? 0) <= note.at + 1) - 1]?.push(note);
  const cut = bars.map(
    (bar, i): BassBar => ({
      at: starts[i] ?? 0,
      phrase: (passage.shapes[bar[0]?.bar ?? 0] ?? PLAIN_SHAPE).phrase,
      chordsAt: bar.map((segment) => segment.at),
      line: lines[i] ?? [],
    }),
  );
  return varyRhythm(random, passage, cut);
};

/** The bass part of a passage: E1–G3, one note at a time, the root (or slash bass) where a chord begins. */
export const playBass = (passage: Passage): readonly NoteEvent[] => {
  const random = createRandom(seedFrom(passage.seed, 'bass'));
  const sway = wandering(passage.seed, 'bass');
  const kindOf = (segment: Segment) => passage.shapes[segment.bar]?.bass;
  const line = runsBy(segmentsOf(passage), kindOf).flatMap((run) => {
    const kind = run[0] === undefined ? 'tacet' : kindOf(run[0]);
    if (kind === 'tacet') return [];
    return kind === 'hits'
      ? runsBy(run, (segment) => segment.bar).flatMap((bar) => hitNotes(random, passage, bar))
      : playBars(random, passage, run);
  });
  const { bars } = passage.chart;
  return withoutLongLeaps(line, passage.next === null ? null : bassRoot(passage.next)).map((note) => {
    const bar = countWhile(bars.length, (i) => (bars[i]?.at ?? 0) <= note.at + 1) - 1;
    const gain = passage.shapes[bar]?.gain ?? 1;
    const swayed = sway(note.at / passage.grid.beatTicks) * SWAY;
    return noteEvent('bass', { ...note, velocity: note.velocity * gain + swayed });
  });
};
