import { elementAt } from '../theory/element-at';
import type { GripGuess } from './grip-guesses';
import { MOST_HARMONICS, type ReedProfiles } from './reed-profiles';

/** How loud each reed of a guess is, as fits a window best, and what that comes to at each of its partials. */
export interface ReedGains {
  fit(guess: GripGuess): void;
  /** Power at each partial of the guess, of all its reeds together. */
  readonly totals: Float64Array;
  /** What one partial's own reed gives of that, 0 to 1. */
  shareOf(partial: number): number;
  /** Level of a reed of the guess, dB. */
  gainOf(owner: number): number;
  /** What loudnesses as unequal as these cost; infinite where lips that do not seal let a neighbour through. */
  strayCost(guess: GripGuess): number;
}

/**
 * How far reeds under one breath differ in loudness, dB, what each reed more must bring, and how much softer than
 * another none is.
 */
const BREATH = { stray: 4, reed: 1, softest: 15 } as const;
const MOST_REEDS = 5;
const ROUNDS = 3;
/** The lowest harmonics say how loud a reed is, and how much of that is shared as a rule, dB. */
const FIRST = { harmonics: 6, shared: 3 } as const;

/** For windows whose levels at all partials (dB) stand in `observed`. */
export const createReedGains = (profiles: ReedProfiles, observed: Float64Array): ReedGains =>
  new FittedGains(profiles, observed);

class FittedGains implements ReedGains {
  readonly totals = new Float64Array(MOST_REEDS * MOST_HARMONICS);
  private readonly own = new Float64Array(MOST_REEDS * MOST_HARMONICS);
  private readonly gains = new Float64Array(MOST_REEDS);
  private readonly powers = new Float64Array(MOST_REEDS);
  private readonly sums = new Float64Array(MOST_REEDS);
  private readonly weights = new Float64Array(MOST_REEDS);
  private readonly profiles: ReedProfiles;
  private readonly observed: Float64Array;

  constructor(profiles: ReedProfiles, observed: Float64Array) {
    this.profiles = profiles;
    this.observed = observed;
  }

  fit(guess: GripGuess): void {
    this.begin(guess.reeds);
    for (let round = 0; round < ROUNDS; round += 1) {
      this.predict(guess);
      this.adjust(guess);
    }
    this.predict(guess);
  }

  shareOf(partial: number): number {
    return (this.own[partial] ?? 0) / (this.totals[partial] ?? 1);
  }

  gainOf(owner: number): number {
    return this.gains[owner] ?? 0;
  }

  strayCost({ reeds }: GripGuess): number {
    const { gains } = this;
    let mean = 0;
    let most = Number.NEGATIVE_INFINITY;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < reeds.length; i += 1) {
      const gain = gains[i] ?? 0;
      mean += gain / reeds.length;
      most = Math.max(most, gain);
      least = Math.min(least, gain);
    }
    if (most - least > BREATH.softest) return Number.POSITIVE_INFINITY;
    let cost = 0;
    for (let i = 0; i < reeds.length; i += 1) cost += ((gains[i] ?? 0) - mean) ** 2;
    return cost / (2 * BREATH.stray * BREATH.stray) + BREATH.reed * reeds.length;
  }

  private begin(reeds: Int32Array): void {
    for (let i = 0; i < reeds.length; i += 1) {
      const reed = reeds[i] ?? 0;
      const { count, levels } = elementAt(this.profiles.reeds, reed);
      const most = Math.min(FIRST.harmonics, count);
      let sum = 0;
      for (let h = 0; h < most; h += 1)
        sum += (this.observed[reed * MOST_HARMONICS + h] ?? 0) - (levels[h] ?? 0);
      this.gains[i] = sum / most - FIRST.shared;
    }
  }

  private predict({ reeds, partials, owners, pairs }: GripGuess): void {
    const { gains, powers, own, totals } = this;
    const expected = this.profiles.powers;
    for (let i = 0; i < reeds.length; i += 1) powers[i] = 10 ** ((gains[i] ?? 0) / 10);
    for (let p = 0; p < partials.length; p += 1) {
      const power = (powers[owners[p] ?? 0] ?? 0) * (expected[partials[p] ?? 0] ?? 0);
      own[p] = power;
      totals[p] = power;
    }
    const { at, of, share } = pairs;
    for (let i = 0; i < at.length; i += 1) {
      const here = at[i] ?? 0;
      totals[here] = (totals[here] ?? 0) + (own[of[i] ?? 0] ?? 0) * (share[i] ?? 0);
    }
  }

  /** Moves each gain to what its partials say, by what each gives of what is heard there. */
  private adjust({ reeds, partials, owners }: GripGuess): void {
    const { gains, sums, weights, own, totals, observed } = this;
    const { levels, weights: known } = this.profiles;
    let mean = 0;
    for (let i = 0; i < reeds.length; i += 1) {
      mean += (gains[i] ?? 0) / reeds.length;
      sums[i] = 0;
      weights[i] = 0;
    }
    for (let p = 0; p < partials.length; p += 1) {
      const id = partials[p] ?? 0;
      const owner = owners[p] ?? 0;
      const share = (own[p] ?? 0) / (totals[p] ?? 1);
      const weight = share * (known[id] ?? 0);
      const level = (observed[id] ?? 0) + (share < 1 ? 10 * Math.log10(share) : 0);
      sums[owner] = (sums[owner] ?? 0) + weight * (level - (levels[id] ?? 0));
      weights[owner] = (weights[owner] ?? 0) + weight;
    }
    const pull = 1 / (2 * BREATH.stray * BREATH.stray);
    for (let i = 0; i < reeds.length; i += 1)
      gains[i] = ((sums[i] ?? 0) + mean * pull) / ((weights[i] ?? 0) + pull);
  }
}
