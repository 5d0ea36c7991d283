import type { Harp, Sound } from '../harp/harp';
import { soundId } from '../harp/tab';
import type { ChordTone } from '../theory/chord';
import { createRandom, seedFrom } from '../theory/random';
import { asPitchClass } from '../theory/units';
import {
  addCosts,
  airAfter,
  airCost,
  type CostContext,
  type Direction,
  directionAfter,
  type LineCost,
  missingCost,
  NO_COST,
  type PlacedSound,
  type PricedSound,
  priceSound,
  stepCost,
  swerveCost,
} from './line-cost';
import type { LineSlot } from './line-slots';

/**
 * The cheapest way through the slots as a shortest path, slot by slot (dynamic programming). A state is what the
 * next step's cost depends on: the sound, the tune's direction, and the air in half beats. Their number does not
 * grow with the line, so the work is linear in its length. A slot may stay empty at a price above any note's.
 */

/** One way to fill a slot. */
export interface LineChoice {
  readonly priced: PricedSound;
  readonly tone: ChordTone;
}

/** The choice for each slot; null leaves it empty. */
export type LinePath = readonly (LineChoice | null)[];

/** What to search. */
export interface LineSearch {
  readonly slots: readonly LineSlot[];
  readonly harp: Harp;
  /** The sounds in reach. */
  readonly sounds: readonly Sound[];
  readonly context: CostContext;
  /** 0 finds the cheapest line; any other number a good one that differs. */
  readonly seed: number;
  /** How far a seeded line may stray: it costs at most this much more than the cheapest, times its slots. */
  readonly variety: number;
}

/** Variety that keeps a line smooth: about a hole and a breath turn a note. */
export const VARIETY = 1.2;

const DIRECTIONS: readonly Direction[] = [null, 'up', 'down'];
const UP = 1;
const DOWN = 2;

/** All ways to fill a slot, lowest sound first. */
export const choicesFor = (slot: LineSlot, priced: readonly PricedSound[]): readonly LineChoice[] =>
  priced.flatMap((each) => {
    const pitchClass = asPitchClass(Math.round(each.sound.pitch));
    const tone = slot.tones.find((wanted) => wanted.pitchClass === pitchClass);
    return tone === undefined ? [] : [{ priced: each, tone }];
  });

/** The cost of a path, part by part, as the sum over its steps; the search minimises its total. */
export const pathCost = (slots: readonly LineSlot[], path: LinePath, context: CostContext): LineCost => {
  let cost = NO_COST;
  let before: PlacedSound | null = null;
  let direction: Direction = null;
  let air = 0;
  slots.forEach((slot, i) => {
    const choice = path[i] ?? null;
    if (choice === null) {
      cost = addCosts(cost, missingCost());
      [before, direction, air] = [null, null, 0];
      return;
    }
    const next: PlacedSound = { slot, priced: choice.priced };
    const from: PlacedSound | null = before;
    const turned: Direction =
      from === null ? null : directionAfter(direction, from.priced.sound.pitch, next.priced.sound.pitch);
    air = airAfter(air, next, context);
    cost = addCosts(cost, stepCost(from, next, context));
    cost = addCosts(cost, swerveCost(direction, turned, context));
    cost = addCosts(cost, airCost(air, context));
    [before, direction] = [next, turned];
  });
  return cost;
};

/** Everything about one slot that the inner loop needs as numbers. */
interface Layer {
  readonly slot: LineSlot;
  readonly choices: readonly LineChoice[];
  /** Seeded price of each choice. */
  readonly noise: readonly number[];
}

/** Costs of all steps between two slots: `rows[from][to]`, the last row being silence before. */
type Steps = readonly Float64Array[];

/** States of one slot: choice, then direction, then air. The last choice is the empty slot. */
interface States {
  readonly cost: Float64Array;
  readonly from: Int32Array;
}

interface Grid {
  /** Air states: half beats from empty to full. */
  readonly levels: number;
  readonly most: number;
  readonly directions: number;
}

const gridOf = ({ comfortableBeats, shape }: CostContext): Grid => ({
  levels: 8 * comfortableBeats + 1,
  most: 2 * comfortableBeats,
  directions: shape.swerve === 0 ? 1 : DIRECTIONS.length,
});

const layersOf = ({ slots, harp, sounds, seed, variety }: LineSearch): readonly Layer[] => {
  const priced = sounds.map((sound) => priceSound(sound, harp));
  return slots.map((slot, i) => {
    const choices = choicesFor(slot, priced);
    const noise = choices.map(({ priced: { sound } }) =>
      seed === 0 ? 0 : variety * createRandom(seedFrom(seed, i, soundId(sound)))(),
    );
    return { slot, choices, noise };
  });
};

const stepsBetween = (before: Layer | null, next: Layer, context: CostContext): Steps => {
  const row = (from: PlacedSound | null): Float64Array =>
    Float64Array.from(
      next.choices,
      ({ priced }) => stepCost(from, { slot: next.slot, priced }, context).total,
    );
  const placed = before?.choices.map(({ priced }) => row({ slot: before.slot, priced })) ?? [];
  return [...placed, row(null)];
};

/** Steps between the same chords cost the same wherever they come; most charts repeat theirs. */
const createStepTable = (context: CostContext): ((before: Layer | null, next: Layer) => Steps) => {
  const known = new Map<string, Steps>();
  const name = ({ chord, tones }: LineSlot): string =>
    `${chord.symbol} ${tones.map(({ degree }) => degree).join(' ')}`;
  return (before, next) => {
    const { length, breathes } = next.slot;
    const from = before === null ? '' : name(before.slot);
    const key = `${from} > ${name(next.slot)} ${length} ${breathes}`;
    const steps = known.get(key) ?? stepsBetween(before, next, context);
    known.set(key, steps);
    return steps;
  };
};

const emptyStates = (size: number): States => ({
  cost: new Float64Array(size).fill(Number.POSITIVE_INFINITY),
  from: new Int32Array(size).fill(-1),
});

/** What the inner loop reads of one step, as numbers only. */
interface Advance {
  readonly states: States;
  /** Pitches of the choices before, then NaN for silence. */
  readonly from: Float64Array;
  readonly to: Float64Array;
  readonly steps: Steps;
  readonly noise: readonly number[];
  /** `levels[choice][level]` is the air level after playing the choice. */
  readonly levels: readonly Int32Array[];
  /** What ending on a level costs. */
  readonly air: Float64Array;
}

const pitchesOf = (layer: Layer | null): Float64Array =>
  Float64Array.from([...(layer?.choices.map(({ priced }) => priced.sound.pitch) ?? []), Number.NaN]);

/** Where each air level leads when a slot is drawn or blown; it depends on the slot's length alone. */
const createAirTable = (grid: Grid, context: CostContext): ((layer: Layer) => readonly Int32Array[]) => {
  const known = new Map<string, Int32Array>();
  const levelOf = (air: number): number => Math.round(2 * (air + grid.most));
  const levelsFor = (slot: LineSlot, priced: PricedSound): Int32Array => {
    const key = `${slot.length} ${slot.breathes} ${priced.sound.breath}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const levels = Int32Array.from({ length: grid.levels }, (_, level) =>
      levelOf(airAfter(level / 2 - grid.most, { slot, priced }, context)),
    );
    known.set(key, levels);
    return levels;
  };
  return ({ slot, choices }) => choices.map(({ priced }) => levelsFor(slot, priced));
};

const directionIndex = (before: number, from: number, to: number): number => {
  if (to > from) return UP;
  if (to < from) return DOWN;
  return to === from ? before : 0;
};

/** Takes every reachable state one slot on and keeps the cheapest way into each state there. */
const advance = (step: Advance, grid: Grid, swerve: number): States => {
  const { states, from, to, steps, noise, levels, air } = step;
  const { directions } = grid;
  const notes = to.length - 1;
  const into = emptyStates(to.length * directions * grid.levels);
  const offer = (state: number, cost: number, origin: number): void => {
    if (!(cost < (into.cost[state] ?? 0))) return;
    into.cost[state] = cost;
    into.from[state] = origin;
  };
  const restState = notes * directions * grid.levels + grid.most * 2;
  const missing = missingCost().total;
  for (let state = 0; state < states.cost.length; state += 1) {
    const cost = states.cost[state] ?? Number.POSITIVE_INFINITY;
    if (cost === Number.POSITIVE_INFINITY) continue;
    offer(restState, cost + missing, state);
    const level = state % grid.levels;
    const direction = Math.floor(state / grid.levels) % directions;
    const choice = Math.floor(state / grid.levels / directions);
    const row = steps[choice];
    const pitch = from[choice] ?? Number.NaN;
    for (let i = 0; i < notes; i += 1) {
      const turned = directions === 1 ? 0 : directionIndex(direction, pitch, to[i] ?? 0);
      const after = levels[i]?.[level] ?? 0;
      const turn = direction !== 0 && turned !== direction ? swerve : 0;
      const price = cost + (row?.[i] ?? 0) + (noise[i] ?? 0) + (air[after] ?? 0) + turn;
      offer((i * directions + turned) * grid.levels + after, price, state);
    }
  }
  return into;
};

const cheapestState = ({ cost }: States): number => {
  let best = 0;
  cost.forEach((each, state) => {
    if (each < (cost[best] ?? 0)) best = state;
  });
  return best;
};

const tracePath = (layers: readonly Layer[], visited: readonly States[], grid: Grid): LinePath => {
  const last = visited.at(-1);
  if (last === undefined) return [];
  const path: (LineChoice | null)[] = [];
  let state = cheapestState(last);
  for (let i = layers.length - 1; i >= 0; i -= 1) {
    const choice = Math.floor(state / grid.levels / grid.directions);
    path.push(layers[i]?.choices[choice] ?? null);
    state = visited[i]?.from[state] ?? 0;
  }
  return path.reverse();
};

/** The cheapest way to fill the slots; the same search always gives the same path. */
export const searchLine = (search: LineSearch): LinePath => {
  const { context } = search;
  const grid = gridOf(context);
  const layers = layersOf(search);
  const stepsFor = createStepTable(context);
  const levelsFor = createAirTable(grid, context);
  const air = Float64Array.from(
    { length: grid.levels },
    (_, level) => airCost(level / 2 - grid.most, context).total,
  );
  let states = emptyStates(grid.directions * grid.levels);
  states.cost[grid.most * 2] = 0;
  const visited = layers.map((layer, i) => {
    const before = layers[i - 1] ?? null;
    const step: Advance = {
      states,
      from: pitchesOf(before),
      to: pitchesOf(layer),
      steps: stepsFor(before, layer),
      noise: layer.noise,
      levels: levelsFor(layer),
      air,
    };
    states = advance(step, grid, context.shape.swerve);
    return states;
  });
  return tracePath(layers, visited, grid);
};
