/**
 * What makes one stroke of a key differ from the next, as on an instrument: the partials of a tone meet in other phases,
 * a drum is struck a little off and answers with another pitch, and each blow is a little duller or brighter. By design,
 * no source; a listener should miss it where it lacks, not notice it where it is.
 */
import type { Biquad } from '../../core/signal/biquad';
import { createRandom } from '../../core/theory/random';
import { allPass, filtered, highShelf } from './biquad';

/** Which of a key's strokes it is, from 0; four differ as much as they can. The seed draws the rest. */
export interface Stroke {
  readonly stroke: number;
  readonly seed: number;
}

/**
 * The turns of phases, as multiples of the fundamental, one a stroke: the first about a quarter of a period apart there,
 * the second among the partials, in another order, since in some instruments the fundamental is hardly heard. Chosen so
 * that no two strokes of a key of any instrument, computed or recorded, are more alike than 0.9.
 */
const FIRST_TURN: readonly number[] = [0.4, 0.8, 1.4, 2.6];
const SECOND_TURN: readonly number[] = [3, 5.5, 2.5, 4.2];
/** Keys differ a little in where they are turned. */
const ELSEWHERE = 0.05;
const QUALITY = 0.7;
/** Nothing is turned above this: phases up there are not heard, and attacks stay sharp. */
const HIGHEST_TURN = 6000;
/** Strokes are up to so many dB duller or brighter from a corner on, as a multiple of the fundamental, or in Hz. */
const BRIGHTER = 1.2;
const TONE_CORNER = 4;
const DRUM_CORNER = 1500;
/** Pitch of a drum's strokes: 20 cents up and down. */
const PITCHES: readonly number[] = [1, 1.012, 0.988, 1.006];

const between = (random: () => number, from: number, to: number): number => from + (to - from) * random();

/** What makes a tone of so many hertz that was struck another time of it. */
export const tonedFilters = (
  hz: number,
  sampleRate: number,
  { stroke, seed }: Stroke,
): readonly [Biquad, Biquad, Biquad] => {
  const random = createRandom(seed);
  const turn = (turns: readonly number[]): Biquad => {
    const times = (turns[stroke % turns.length] ?? 1) * between(random, 1 - ELSEWHERE, 1 + ELSEWHERE);
    return allPass(Math.min(HIGHEST_TURN, hz * times), QUALITY, sampleRate);
  };
  return [
    turn(FIRST_TURN),
    turn(SECOND_TURN),
    highShelf(Math.min(HIGHEST_TURN, hz * TONE_CORNER), between(random, -BRIGHTER, BRIGHTER), sampleRate),
  ];
};

/** A tone of so many hertz struck another time. */
export const tonedStroke = (
  samples: Float32Array,
  hz: number,
  sampleRate: number,
  stroke: Stroke,
): Float32Array => filtered(samples, tonedFilters(hz, sampleRate, stroke));

/** Samples at another speed, by Hermite's cubic through four of them. */
const resampled = (samples: Float32Array, rate: number): Float32Array => {
  const out = new Float32Array(Math.max(1, Math.floor((samples.length - 1) / rate)));
  for (let i = 0; i < out.length; i += 1) {
    const at = i * rate;
    const n = Math.floor(at);
    const t = at - n;
    const before = samples[n - 1] ?? 0;
    const here = samples[n] ?? 0;
    const next = samples[n + 1] ?? 0;
    const after = samples[n + 2] ?? 0;
    const slope = (next - before) / 2;
    const curve = before - 2.5 * here + 2 * next - 0.5 * after;
    const bend = 1.5 * (here - next) + 0.5 * (after - before);
    out[i] = here + t * (slope + t * (curve + t * bend));
  }
  return out;
};

/** A drum or cymbal struck another time: faster or slower, and what is then to be done with it. */
export const drumStroke = (
  samples: Float32Array,
  sampleRate: number,
  { stroke, seed }: Stroke,
): { readonly samples: Float32Array; readonly filter: Biquad } => ({
  samples: resampled(samples, PITCHES[stroke % PITCHES.length] ?? 1),
  filter: highShelf(DRUM_CORNER, between(createRandom(seed), -BRIGHTER, BRIGHTER), sampleRate),
});
