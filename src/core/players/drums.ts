import type { DrumPattern } from '../feels/drum-pattern';
import { FILL_MARKS } from '../feels/fills';
import { DRUM_KEYS, type DrumLane } from '../score/drum-kit';
import { noteEvent } from '../score/note';
import type { NoteEvent } from '../score/score';
import { fitSteps, hitSteps, readSteps, type StepBar, ticksOf } from '../score/steps';
import { createRandom, pick, type Random, seedFrom } from '../theory/random';
import { BRUSH_STRENGTH, laneForKit, STROKE_LENGTH, STROKES } from './drum-strokes';
import { patternStrokes } from './drum-time';
import type { BarShape, FillSize, Passage } from './passage';
import { createVaried, type Stroke } from './vary-time';
import { wandering } from './wander';

const CYMBALS: ReadonlySet<DrumLane> = new Set(['hat', 'open', 'ride', 'bell', 'crash']);

const fillStrokes = (passage: Passage, bar: StepBar, fromBeat: number): readonly Stroke[] =>
  bar.flatMap((step) =>
    (FILL_MARKS[step.mark] ?? []).map(([lane, mark]) => ({
      at: ticksOf(passage.grid, { ...step, beat: step.beat + fromBeat }),
      lane,
      mark,
    })),
  );

/** How often the foot goes on under a fill where the hand kept the time (Groove MIDI Dataset: 87–96 % of filled bars). */
const FOOT_CHANCE = 0.93;

/** The hat's foot on the backbeats under a fill, where it does not play already. */
const footUnder = (
  random: Random,
  { grid }: Passage,
  stays: readonly Stroke[],
  from: number,
): readonly Stroke[] => {
  const plays = stays.some(({ lane }) => lane === 'foot');
  if (plays || random() >= FOOT_CHANCE) return [];
  return Array.from({ length: grid.beats }, (_, beat) => beat)
    .filter((beat) => beat * grid.beatTicks >= from && (beat % 2 === 1 || beat === grid.beats - 1))
    .map((beat) => ({ at: beat * grid.beatTicks, lane: 'foot', mark: 'o' }));
};

/** What leads in on the last off-beat while the time goes on: kick and snare, or one light stroke. */
const leadIn = (random: Random, { grid }: Passage, size: 'cue' | 'pick-up'): readonly Stroke[] => {
  const at = ticksOf(grid, { beat: grid.beats - 1, step: 1, of: 2, mark: '' });
  if (size === 'pick-up') return [{ at, lane: pick(random, ['snare', 'low', 'snare'] as const), mark: 'x' }];
  return [
    { at, lane: 'kick', mark: 'X' },
    { at, lane: 'snare', mark: 'x' },
  ];
};

/** Lays a fill over the end of a bar: the hands leave the time for it, the feet stay. */
const withFill = (
  random: Random,
  passage: Passage,
  time: readonly Stroke[],
  size: FillSize,
): readonly Stroke[] => {
  if (size === 'cue' || size === 'pick-up') return [...time, ...leadIn(random, passage, size)];
  const book = passage.feel.drumming.fills;
  const { beats, beatTicks } = passage.grid;
  const kind = ({ beat: 'short', half: 'middle', bar: 'long' } as const)[size];
  const wanted = { short: 1, middle: 2, long: 4 }[kind];
  const length = Math.min(wanted, beats);
  const figure = readSteps(pick(random, book[kind]))[0] ?? [];
  const kept = figure
    .filter((step) => step.beat >= wanted - length)
    .map((step) => ({ ...step, beat: step.beat - (wanted - length) }));
  const from = (beats - length) * beatTicks;
  const stays = time.filter((stroke) => stroke.at < from || stroke.lane === 'foot' || stroke.lane === 'kick');
  return [
    ...stays,
    ...footUnder(random, passage, stays, from),
    ...fillStrokes(passage, kept, beats - length),
  ];
};

/** A bar of a drum solo, counted from its beginning, and whether it is the last. */
interface SoloBar {
  readonly bar: number;
  readonly last: boolean;
}

/** A solo of this many bars or more ends in a fill of a whole bar. */
const FILLED_SOLO = 3;

/** A bar of drum solo: cells answer each other in pairs of bars, the feet keep the time. */
const soloStrokes = (
  random: Random,
  passage: Passage,
  motif: readonly string[],
  { bar, last }: SoloBar,
): readonly Stroke[] => {
  const { cells, long } = passage.feel.drumming.fills;
  const { beats, beatTicks } = passage.grid;
  const call = bar % 2 === 0;
  const chosen = [motif[0], call ? motif[1] : null, null, call ? motif[2] : null].map(
    (cell) => cell ?? pick(random, cells),
  );
  const figure =
    last && bar + 1 >= FILLED_SOLO
      ? (readSteps(pick(random, long))[0] ?? [])
      : chosen.flatMap((cell, beat) => (readSteps(cell)[0] ?? []).map((step) => ({ ...step, beat })));
  const feet = Array.from({ length: beats }, (_, beat): readonly Stroke[] => {
    const kick: Stroke = { at: beat * beatTicks, lane: 'kick', mark: 'g' };
    return beat % 2 === 1 ? [kick, { at: beat * beatTicks, lane: 'foot', mark: 'x' }] : [kick];
  });
  return [...fillStrokes(passage, fitSteps(figure, beats, 'line'), 0), ...feet.flat()];
};

const hitStrokes = (passage: Passage, hits: string): readonly Stroke[] =>
  hitSteps(hits, passage.grid.beats).flatMap((step) => {
    const at = ticksOf(passage.grid, step);
    const top: Stroke = { at, lane: step.mark === 'h' ? 'crash' : 'snare', mark: 'X' };
    return [{ at, lane: 'kick', mark: 'X' } as const, top];
  });

/** A bar of hits; a fill at its end leads back into time. */
const hitBarStrokes = (random: Random, passage: Passage, shape: BarShape): readonly Stroke[] => {
  const hits = hitStrokes(passage, shape.hits);
  return shape.fill === 'none' ? hits : withFill(random, passage, hits, shape.fill);
};

/** A bar of time by its pattern, filled and marked with a cymbal as its shape asks. */
const timeStrokes = (
  random: Random,
  passage: Passage,
  shape: BarShape,
  time: readonly Stroke[],
): readonly Stroke[] => {
  const filled = shape.fill === 'none' ? time : withFill(random, passage, time, shape.fill);
  if (!shape.crash) return filled;
  const others = filled.filter(
    (stroke) => stroke.at > 0 || (stroke.lane !== 'ride' && stroke.lane !== 'hat' && stroke.lane !== 'open'),
  );
  return [{ at: 0, lane: 'crash', mark: 'x' }, { at: 0, lane: 'kick', mark: 'x' }, ...others];
};

const brushSwirls = (passage: Passage, shape: BarShape): readonly Stroke[] => {
  if (passage.style.kit !== 'brushes' || shape.drums !== 'time' || !passage.feel.drumming.sweeps) return [];
  const half = Math.max(1, Math.floor(passage.grid.beats / 2));
  return [0, half]
    .filter((beat, i) => i === 0 || beat < passage.grid.beats)
    .map((beat) => ({ at: beat * passage.grid.beatTicks, lane: 'swirl', mark: 'o' }));
};

/** How far a limb wanders from its loudness, as a share of it. */
const SWAY = 0.06;

/** A stroke at its place in the passage as an event; `gain` is the bar's, `sway` where the limb wanders, −1…1. */
const toEvent = (passage: Passage, stroke: Stroke, gain: number, sway: number): NoteEvent => {
  const lane = laneForKit(passage.style.kit, stroke.lane, stroke.mark);
  const soft = passage.style.kit === 'brushes' ? (BRUSH_STRENGTH[stroke.lane] ?? 1) : 1;
  const strength = STROKES[stroke.lane][stroke.mark] ?? 0;
  return noteEvent('drums', {
    at: stroke.at,
    length: passage.grid.beatTicks * (STROKE_LENGTH[lane] ?? 0.2),
    pitch: DRUM_KEYS[lane],
    velocity: strength * soft * (gain + sway * SWAY),
  });
};

/** Where each limb wanders: the foot on the kick, the foot on the hat, the hand on the cymbals, the hand on the drums. */
const swayingLimbs = ({ seed, grid }: Passage): ((lane: DrumLane, at: number) => number) => {
  const sways = {
    kick: wandering(seed, 'kick'),
    foot: wandering(seed, 'foot'),
    cymbals: wandering(seed, 'cymbals'),
  };
  const drums = wandering(seed, 'drums');
  return (lane, at) => {
    const limb = CYMBALS.has(lane) ? 'cymbals' : lane;
    const sway = limb === 'kick' || limb === 'foot' || limb === 'cymbals' ? sways[limb] : drums;
    return sway(at / grid.beatTicks);
  };
};

/** A section of another name goes on with the patterns of the one before this often; a last phrase does half the time. */
const SAME_IDEA = 0.4;
const SAME_CLOSE = 0.5;

/** One pattern a level for each section, and half the time another for its last phrase. */
const patternOfBars = (random: Random, { feel, shapes }: Passage): readonly DrumPattern[] => {
  const book = feel.drumming.patterns;
  const drawn = () => book.map((patterns) => pick(random, patterns));
  const ideas = new Map<string, { main: readonly DrumPattern[]; close: readonly DrumPattern[] }>();
  let before: readonly DrumPattern[] | undefined;
  for (const { phrase } of shapes) {
    if (ideas.has(phrase.name)) continue;
    before = before !== undefined && random() < SAME_IDEA ? before : drawn();
    ideas.set(phrase.name, { main: before, close: random() < SAME_CLOSE ? before : drawn() });
  }
  return shapes.map(({ level, phrase }) => {
    const idea = ideas.get(phrase.name);
    return (phrase.closes ? idea?.close : idea?.main)?.[level] ?? {};
  });
};

/** The drum part of a passage: time with ghosts and small changes, fills, ensemble hits, solo bars. */
export const playDrums = (passage: Passage): readonly NoteEvent[] => {
  const random = createRandom(seedFrom(passage.seed, 'drums'));
  const choice = createRandom(seedFrom(passage.seed, 'drum patterns'));
  const limbs = swayingLimbs(passage);
  const patterns = patternOfBars(choice, passage);
  const motif = [0, 1, 2].map(() => pick(choice, passage.feel.drumming.fills.cells));
  const varied = createVaried(passage);
  let solo = 0;
  return passage.chart.bars.flatMap((bar, index) => {
    const shape = passage.shapes[index];
    if (shape === undefined || shape.drums === 'tacet') return [];
    const strokes = {
      time: () => {
        const own = createRandom(seedFrom(passage.seed, 'drum bar', index));
        const time = varied(own, patternStrokes(random, passage, patterns[index] ?? {}, index), shape);
        return timeStrokes(random, passage, shape, time);
      },
      hits: () => hitBarStrokes(random, passage, shape),
      solo: () =>
        soloStrokes(random, passage, motif, {
          bar: solo,
          last: passage.shapes[index + 1]?.drums !== 'solo',
        }),
    }[shape.drums]();
    solo = shape.drums === 'solo' ? solo + 1 : 0;
    return [...strokes, ...brushSwirls(passage, shape)].map((stroke) => {
      const at = bar.at + stroke.at;
      return toEvent(passage, { ...stroke, at }, shape.gain, limbs(stroke.lane, at));
    });
  });
};
