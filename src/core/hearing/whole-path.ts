import { elementAt } from '../theory/element-at';
import { createPitchPath, type PathCosts, type PitchPath } from './pitch-path';

/** A path that is decided once what follows is known as well. */
export interface WholePath {
  /** As a path that knows no future; what it is shown is kept until it is decided. */
  readonly path: PitchPath;
  /** Decides all that is left, and returns the place of every step so far: −1 for no pitch. */
  decide(): readonly number[];
}

/** Steps that wait before half of them are decided: the other half, some two seconds, is future enough for any. */
const WAITING = 800;

/** What was known after a step. */
interface Step {
  readonly scores: Float32Array;
  readonly silence: number;
}

const bestPlace = (scores: Float32Array): number => {
  let best = 0;
  for (let i = 1; i < scores.length; i += 1) if ((scores[i] ?? 0) > (scores[best] ?? 0)) best = i;
  return best;
};

/** Where the best way to a place of the grid, or to no pitch (−1), came from. */
const cameFrom = (
  { scores, silence }: Step,
  place: number,
  { moves, leap, start, stop }: PathCosts,
): number => {
  const top = bestPlace(scores);
  const highest = scores[top] ?? 0;
  if (place < 0) return silence >= highest - stop ? -1 : top;
  let [from, most] = highest >= silence - start ? [top, highest - leap] : [-1, silence - start - leap];
  for (let k = 0; k < moves.length; k += 1) {
    for (const near of [place - k, place + k]) {
      const value = (scores[near] ?? Number.NEGATIVE_INFINITY) - (moves[k] ?? 0);
      if (value > most) [from, most] = [near, value];
    }
  }
  return from;
};

/**
 * The other half of the Viterbi algorithm: the best way is followed back from what came later, which a listener to a
 * recording knows and one who listens while it is played does not.
 */
export const createWholePath = (size: number, costs: PathCosts): WholePath => {
  const forward = createPitchPath(size, costs);
  const places: number[] = [];
  let steps: Step[] = [];

  const decide = (count: number): void => {
    const last = steps.at(-1);
    if (last === undefined) return;
    const top = bestPlace(last.scores);
    let place = last.silence >= (last.scores[top] ?? 0) ? -1 : top;
    const found = [place];
    for (let i = steps.length - 2; i >= 0; i -= 1) {
      place = cameFrom(elementAt(steps, i), place, costs);
      found.push(place);
    }
    places.push(...found.toReversed().slice(0, count));
    steps = steps.slice(count);
  };

  return {
    path: {
      ...forward,
      step(evidence, unvoiced) {
        const place = forward.step(evidence, unvoiced);
        steps.push({ scores: Float32Array.from(forward.scores()), silence: forward.silence() });
        if (steps.length >= WAITING) decide(WAITING / 2);
        return place;
      },
    },
    decide() {
      decide(steps.length);
      return places;
    },
  };
};
