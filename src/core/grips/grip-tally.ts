import type { PastFrames } from './frame-past';
import type { GripGuess } from './grip-guesses';
import type { GripRecogniser } from './recognise-grip';

/** Adds up what the windows of one breath say. */
export interface GripTally {
  /** Takes a window (levels in dB); true where it and the one before say another thing than those before them. */
  take(levels: Float64Array, frames: PastFrames): boolean;
  /** The grip that is likelier by so much than any single note, in all windows together; null where there is none. */
  grip(sure: number): GripGuess | null;
  /** Whether a single note is likelier by so much than any grip, in all windows together. */
  isSingle(sure: number): boolean;
  /** Begins another breath. */
  reset(): void;
}

/** A window teaches what its likeliest guess sounds like, where that is so much likelier than any other. */
const TEACHES = 3;
/** What sounds changes within a breath where the last two windows say so by this much. */
const CHANGED = 14;
/**
 * How periodic the sound is, by what frames say: single notes nearly always more than the first, several holes mostly
 * less than the second. What that speaks against several holes in a window; and what speaks against octaves, which are
 * as periodic as one note, and which a note with a strong second harmonic looks like.
 */
const CLARITY = { single: 0.95, several: 0.9, against: 2.3, for: -2 } as const;
const OCTAVE = 2;

/** The guess of least cost among those that count; −1 where none does. */
const likeliest = (costs: Float64Array, counts: (guess: number) => boolean): number => {
  let best = -1;
  for (let i = 0; i < costs.length; i += 1)
    if (counts(i) && (best < 0 || (costs[i] ?? 0) < (costs[best] ?? 0))) best = i;
  return best;
};

const all = (): boolean => true;

/** For one stream. */
export const createGripTally = (recogniser: GripRecogniser): GripTally => new Tally(recogniser);

class Tally implements GripTally {
  private readonly recogniser: GripRecogniser;
  private readonly costs: Float64Array;
  private readonly before: Float64Array;
  /** Of the last two windows. */
  private readonly recent: Float64Array;
  private readonly sums: Float64Array;
  private windows = 0;

  constructor(recogniser: GripRecogniser) {
    this.recogniser = recogniser;
    const size = recogniser.guesses.length + 1;
    this.costs = new Float64Array(size);
    this.before = new Float64Array(size);
    this.recent = new Float64Array(size);
    this.sums = new Float64Array(size);
  }

  take(levels: Float64Array, { pitch, clarity, moved }: PastFrames): boolean {
    const { recogniser, costs, before, recent, sums } = this;
    if (moved || !recogniser.weigh(levels, pitch, costs)) return false;
    this.weighClarity(clarity);
    const stood = likeliest(sums, all);
    for (let i = 0; i < costs.length; i += 1) {
      recent[i] = (costs[i] ?? 0) + (before[i] ?? 0);
      sums[i] = (sums[i] ?? 0) + (costs[i] ?? 0);
    }
    before.set(costs);
    this.windows += 1;
    const now = likeliest(recent, all);
    if (this.windows > 2 && (recent[stood] ?? 0) - (recent[now] ?? 0) > CHANGED) {
      sums.set(recent);
      this.windows = 2;
      return true;
    }
    this.learn();
    return false;
  }

  grip(sure: number): GripGuess | null {
    const { sums } = this;
    const best = this.windows > 0 ? likeliest(sums, all) : -1;
    if (!this.isGrip(best)) return null;
    const single = likeliest(sums, (guess) => !this.isGrip(guess));
    if ((sums[single] ?? 0) - (sums[best] ?? 0) < sure) return null;
    return this.recogniser.guesses[best] ?? null;
  }

  isSingle(sure: number): boolean {
    const { sums } = this;
    if (this.windows === 0) return false;
    const best = likeliest(sums, all);
    const grip = likeliest(sums, (guess) => this.isGrip(guess));
    return !this.isGrip(best) && (sums[grip] ?? 0) - (sums[best] ?? 0) >= sure;
  }

  reset(): void {
    this.sums.fill(0);
    this.before.fill(0);
    this.windows = 0;
  }

  private isGrip(guess: number): boolean {
    return (this.recogniser.guesses[guess]?.holes.length ?? 0) > 1;
  }

  private weighClarity(clarity: number): void {
    const { guesses } = this.recogniser;
    const against = clarity > CLARITY.single ? CLARITY.against : clarity < CLARITY.several ? CLARITY.for : 0;
    for (let i = 0; i < guesses.length; i += 1)
      if (this.isGrip(i)) this.costs[i] = (this.costs[i] ?? 0) + (guesses[i]?.unison ? OCTAVE : against);
  }

  /** Learns from the window, where it is clear and the breath agrees. What is followed is no other than a reed of its pitch. */
  private learn(): void {
    const { costs, recogniser } = this;
    const last = recogniser.guesses.length;
    const best = likeliest(this.sums, all);
    if (best >= last || best !== likeliest(costs, all)) return;
    const rival = likeliest(costs, (guess) => guess !== best && (guess < last || this.isGrip(best)));
    if ((costs[rival] ?? 0) - (costs[best] ?? 0) > TEACHES) recogniser.learn(best);
  }
}
