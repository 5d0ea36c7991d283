import { createRandom, pick, type Random, seedFrom } from '../theory/random';
import { BASS_BOOK, type BassStyle } from './bass-patterns';
import { BASS_HIGH, BASS_LOW, bassRoot, homePitch, intoRegister, pickApproach } from './bass-register';
import { type ChordShape, chordShape } from './chord-scale';
import { type NoteDraft, noteEvent } from './note';
import { type Passage, type Segment, segmentsOf } from './passage';
import type { NoteEvent } from './score';
import { fitSteps, hitSteps, readSteps, type Step, type StepBar, ticksOf } from './steps';
import { walk } from './walking';

const VELOCITY = { strong: 92, weak: 86, off: 72, skip: 58, hit: 98 } as const;

/** The pitch a pattern's mark asks for above a root in its home place; null for approaches. */
const markPitch = (mark: string, root: number, shape: ChordShape): number | null => {
  const sixth = shape.scale.find((step) => step > shape.fifth && step < 10) ?? shape.fifth;
  const steps: Readonly<Record<string, number>> = {
    R: 0,
    '3': shape.third,
    '5': shape.fifth,
    '6': sixth,
    '7': shape.seventh ?? 12,
    '8': 12,
  };
  if (mark === 'b') return root + shape.fifth - 12 >= BASS_LOW ? root + shape.fifth - 12 : root + shape.fifth;
  const step = steps[mark];
  return step === undefined ? null : root + step;
};

const octaveAway = (pitch: number): number => {
  if (pitch + 12 <= BASS_HIGH) return pitch + 12;
  return pitch - 12 >= BASS_LOW ? pitch - 12 : pitch;
};

interface Struck {
  readonly at: number;
  readonly pitch: number;
  readonly step: Step;
}

/** Notes of a pattern over one bar; every chord's start strikes its root whatever the pattern holds there. */
const strikeRiff = (
  random: Random,
  passage: Passage,
  bar: StepBar,
  segments: readonly Segment[],
): readonly (Struck | { readonly at: number; readonly rest: true })[] => {
  const barAt = segments[0]?.at ?? 0;
  const marks = bar.map((step) => ({ step, at: barAt + ticksOf(passage.grid, step) }));
  for (const segment of segments) {
    if (!marks.some(({ at }) => Math.abs(at - segment.at) < 1)) {
      marks.push({ step: { beat: 0, step: 0, of: 1, mark: 'R' }, at: segment.at });
    }
  }
  marks.sort((a, b) => a.at - b.at);
  const struck: (Struck | { readonly at: number; readonly rest: true })[] = [];
  let last = 0;
  for (const { step, at } of marks) {
    const segment = segments.findLast((each) => each.at <= at + 1) ?? segments[0];
    if (segment === undefined) continue;
    const starts = segment.change && Math.abs(at - segment.at) < 1;
    const inBar = Math.abs(at - segment.at) < 1 && step.beat > 0;
    if (step.mark === '.' && !starts) struck.push({ at, rest: true });
    if ((step.mark === '.' || step.mark === '-') && !starts) continue;
    const pitch = starts || inBar ? bassRoot(segment.chord) : soundOf(random, step.mark, segment, last);
    struck.push({ at, pitch, step });
    last = pitch;
  }
  return struck;
};

const soundOf = (random: Random, mark: string, segment: Segment, last: number): number => {
  const shape = chordShape(segment.chord);
  if (mark === '^') return octaveAway(last);
  const following = segment.next ?? segment.chord;
  if (mark === 'A') return pickApproach(random, last, bassRoot(following), chordShape(following));
  if (mark === 'a') return intoRegister(bassRoot(following) + (last > bassRoot(following) ? 2 : -2));
  return intoRegister(markPitch(mark, homePitch(segment.chord.root), shape) ?? last);
};

const strengthOf = (step: Step): number => {
  if (step.step > 0) return VELOCITY.off;
  return step.beat % 2 === 0 ? VELOCITY.strong : VELOCITY.weak;
};

/** Two-bar patterns go on while the chord lasts and begin again with a new one; a chord of one bar gets the first. */
const riffBar = (bars: readonly StepBar[], segment: Segment): StepBar => {
  const bar = bars[segment.barsHeld % bars.length];
  if (bar === undefined) throw new RangeError('A bass pattern needs at least one bar');
  return bar;
};

const leadsOut = (random: Random, bar: StepBar, segments: readonly Segment[]): StepBar => {
  const leaving = segments.at(-1);
  const changes = leaving?.next != null && leaving.next.symbol !== leaving.chord.symbol;
  const lastBeat = Math.max(...bar.map((step) => step.beat));
  if (!changes || lastBeat < 1 || random() < 0.4) return bar;
  const last = bar.findLastIndex((step) => step.beat === lastBeat && !'.-^'.includes(step.mark));
  return bar.map((step, i) => (i === last ? { ...step, mark: 'A' } : step));
};

const riffNotes = (
  random: Random,
  passage: Passage,
  text: string,
  segments: readonly Segment[],
): readonly NoteDraft[] => {
  const first = segments[0];
  const barLength = segments.reduce((sum, segment) => sum + segment.length, 0);
  if (first === undefined) return [];
  const bar = fitSteps(riffBar(readSteps(text), first), passage.grid.beats, 'line');
  const struck = strikeRiff(random, passage, leadsOut(random, bar, segments), segments);
  return struck.flatMap((note, i) => {
    if ('rest' in note) return [];
    const until = struck[i + 1]?.at ?? first.at + barLength;
    const held = note.step.step > 0 && note.step.of === 2 ? 0.72 : 0.9;
    return [
      { at: note.at, length: (until - note.at) * held, pitch: note.pitch, velocity: strengthOf(note.step) },
    ];
  });
};

/** A light repeated note on the off-beat before the next beat, now and then. */
const withSkips = (
  random: Random,
  passage: Passage,
  notes: readonly NoteDraft[],
  chance: number,
): readonly NoteDraft[] => {
  const { grid } = passage;
  const off =
    ticksOf(grid, { beat: 0, step: 1, of: grid.compound ? 3 : 2, mark: '' }) * (grid.compound ? 2 : 1);
  return notes.flatMap((note) => {
    if (note.length < grid.beatTicks * 0.8 || random() >= chance) return [note];
    const skip = {
      at: note.at + off,
      length: (grid.beatTicks - off) * 0.7,
      pitch: note.pitch,
      velocity: VELOCITY.skip,
    };
    return [{ ...note, length: off * 0.8 }, skip];
  });
};

/** Walks the segments of consecutive bars; with `two`, every other beat is left to ring. */
const walkNotes = (
  random: Random,
  passage: Passage,
  segments: readonly Segment[],
  two: boolean,
): readonly NoteDraft[] => {
  const { beatTicks, beats } = passage.grid;
  const level = passage.shapes[segments[0]?.bar ?? 0]?.level ?? 1;
  const notes = walk(random, segments, beatTicks).flatMap(({ pitches }, i) => {
    const segment = segments[i];
    if (segment === undefined) return [];
    const kept = pitches
      .map((pitch, beat) => ({ pitch, beat }))
      .filter(
        ({ beat }) =>
          !two ||
          beat === 0 ||
          (beat === 2 && beats === 4) ||
          (beat === pitches.length - 1 && random() < 0.3),
      );
    return kept.map(({ pitch, beat }, k) => {
      const until = kept[k + 1]?.beat ?? segment.length / beatTicks;
      const velocity = (beat % 2 === 0 ? VELOCITY.strong : VELOCITY.weak + 4) - (two ? 4 : 0);
      return {
        at: segment.at + beat * beatTicks,
        length: (until - beat) * beatTicks * 0.93,
        pitch,
        velocity,
      };
    });
  });
  return withSkips(random, passage, notes, two ? 0.06 : 0.05 + level * 0.06);
};

const hitNotes = (passage: Passage, segments: readonly Segment[], hits: string): readonly NoteDraft[] => {
  const first = segments[0];
  if (first === undefined) return [];
  const end = segments.reduce((sum, segment) => sum + segment.length, first.at);
  const struck = hitSteps(hits, passage.grid.beats)
    .map((step) => ({ at: first.at + ticksOf(passage.grid, step), held: step.mark === 'h' }))
    .filter(({ at }) => at < end);
  return struck.map(({ at, held }, i) => {
    const chord = (segments.findLast((segment) => segment.at <= at + 1) ?? first).chord;
    const room = (struck[i + 1]?.at ?? end) - at;
    const length = held ? room : Math.min(room, passage.grid.beatTicks * 0.45);
    return { at, length, pitch: bassRoot(chord), velocity: VELOCITY.hit };
  });
};

/** Consecutive segments the bass treats alike: bars of one kind, or bars that walk. */
const runsOf = (passage: Passage, segments: readonly Segment[]): readonly (readonly Segment[])[] => {
  const runs: Segment[][] = [];
  for (const segment of segments) {
    const kind = passage.shapes[segment.bar]?.bass;
    const run = runs.at(-1);
    if (run?.[0] !== undefined && passage.shapes[run[0].bar]?.bass === kind) run.push(segment);
    else runs.push([segment]);
  }
  return runs;
};

const barsOf = (segments: readonly Segment[]): readonly (readonly Segment[])[] =>
  [...new Set(segments.map((segment) => segment.bar))].map((bar) =>
    segments.filter((each) => each.bar === bar),
  );

/** Patterns hand over to a walk in the last two bars now and then, so that a chorus closes its own way. */
const playRun = (
  random: Random,
  passage: Passage,
  style: BassStyle,
  run: readonly Segment[],
): readonly NoteDraft[] => {
  if (style === 'walk' || style === 'two') return walkNotes(random, passage, run, style === 'two');
  const bars = barsOf(run);
  const lastBar = passage.chart.bars.length - 1;
  const walksOut =
    WALK_OUT.has(passage.feel) && bars.length > 4 && run.at(-1)?.bar === lastBar && random() < 0.6;
  const riffs = walksOut ? bars.slice(0, -2) : bars;
  return [
    ...riffs.flatMap((bar) => riffNotes(random, passage, style.riff, bar)),
    ...(walksOut ? walkNotes(random, passage, bars.slice(-2).flat(), false) : []),
  ];
};

const WALK_OUT: ReadonlySet<string> = new Set([
  'shuffle',
  'double-shuffle',
  'boogie',
  'jump',
  'slow-12-8',
  'train',
]);

/** The bass part of a passage: E1–G3, one note at a time, the root (or slash bass) where a chord begins. */
export const playBass = (passage: Passage): readonly NoteEvent[] => {
  const random = createRandom(seedFrom(passage.seed, 'bass'));
  const taste = createRandom(seedFrom(passage.seed, 'bass style'));
  const level = passage.shapes.find((shape) => shape.bass === 'play')?.level ?? 1;
  const style = pick(taste, BASS_BOOK[passage.feel][level]);
  return runsOf(passage, segmentsOf(passage)).flatMap((run) => {
    const shape = passage.shapes[run[0]?.bar ?? 0];
    if (shape === undefined || shape.bass === 'tacet') return [];
    const notes =
      shape.bass === 'play'
        ? playRun(random, passage, style, run)
        : barsOf(run).flatMap((bar) => hitNotes(passage, bar, passage.shapes[bar[0]?.bar ?? 0]?.hits ?? 'x'));
    return notes.map((note) => {
      const gain = passage.shapes[run.findLast((each) => each.at <= note.at + 1)?.bar ?? 0]?.gain ?? 1;
      return noteEvent('bass', { ...note, velocity: note.velocity * gain + (random() - 0.5) * 8 });
    });
  });
};
