import type { Sound } from '../harp/harp';
import { elementAt } from '../theory/element-at';
import { followedGuesses, type GripGuess, gripGuesses } from './grip-guesses';
import { createReedGains, type ReedGains } from './reed-gains';
import { type HeardPartial, MOST_HARMONICS, type ReedProfiles } from './reed-profiles';
import { createWindowPartials, type WindowPartials } from './window-partials';

/** Tells how well every guess explains a window of sound. */
export interface GripRecogniser {
  /** Single holes and all that a mouth can cover, on each breath. */
  readonly guesses: readonly GripGuess[];
  /**
   * Fills `costs` for a spectrum in dB: an entry for every guess and a last one for a single note of the given pitch
   * (Hz; 0 where none is known): how much less likely than the likeliest, at most `MOST_COST`. False where there is
   * nothing to tell.
   */
  weigh(levels: Float64Array, pitch: number, costs: Float64Array): boolean;
  /** Learns the reeds of a guess from the window weighed last. */
  learn(guess: number): void;
  /** Learns from a spectrum in dB that is known to be one natural sound; nothing from silence, or noise. */
  teach(levels: Float64Array, sound: Pick<Sound, 'hole' | 'breath'>): void;
}

/** Beyond this a guess is out of the question in a window, whatever others say. Logarithm of a likelihood. */
const MOST_COST = 30;
/** A peak that the guess leaves unexplained by more than so many dB speaks against it, up to so many, by this spread. */
const PEAK = { spare: 3, most: 25, stray: 5 } as const;
/** No harmonic counts for more than so far off what is expected. dB. */
const MOST_OFF = 15;
/** A harmonic is one reed's own where it gives at least so much of it. */
const OWN_SHARE = 0.75;

/**
 * Recognises grips of a harp. Every guess is a sum of reeds, each as loud as fits best: what speaks against it are
 * harmonics that lie off what is known of them, and peaks of the spectrum that belong to none of its reeds. The
 * likelihoods are of levels in dB, since reeds differ by factors.
 *
 * @param binHz of the spectra.
 */
export const createGripRecogniser = (profiles: ReedProfiles, binHz: number): GripRecogniser =>
  new Recogniser(profiles, binHz);

class Recogniser implements GripRecogniser {
  readonly guesses: readonly GripGuess[];
  private readonly profiles: ReedProfiles;
  private readonly followed: readonly GripGuess[];
  private readonly window: WindowPartials;
  private readonly gains: ReedGains;
  /** What each guess costs at least. */
  private readonly least: Float64Array;
  private readonly order: Int32Array;
  private readonly seen = new Int32Array(4096);
  private stamp = 0;

  constructor(profiles: ReedProfiles, binHz: number) {
    this.profiles = profiles;
    this.followed = followedGuesses(profiles);
    this.guesses = gripGuesses(profiles, binHz);
    this.window = createWindowPartials(profiles, binHz);
    this.gains = createReedGains(profiles, this.window.observed);
    this.least = new Float64Array(this.guesses.length + 1);
    this.order = Int32Array.from(this.least.keys());
  }

  weigh(levels: Float64Array, pitch: number, costs: Float64Array): boolean {
    const { guesses, profiles, window, least, order, gains } = this;
    profiles.follow(pitch);
    if (!window.take(levels)) return false;
    const { count } = elementAt(profiles.reeds, profiles.reeds.length - 1);
    const followed = pitch > 0 ? elementAt(this.followed, count) : null;
    const guessAt = (i: number): GripGuess | null => guesses[i] ?? followed;
    for (let i = 0; i < least.length; i += 1) {
      const guess = guessAt(i);
      least[i] = guess === null ? Number.POSITIVE_INFINITY : this.unexplained(guess.reeds);
    }
    order.sort((a, b) => (least[a] ?? 0) - (least[b] ?? 0));
    let best = Number.POSITIVE_INFINITY;
    costs.fill(Number.POSITIVE_INFINITY);
    for (const i of order) {
      const guess = guessAt(i);
      if (guess === null || (least[i] ?? 0) > best + MOST_COST) break;
      gains.fit(guess);
      const stray = gains.strayCost(guess);
      // Out of the question by its loudnesses alone: harmonics are dear to look at.
      if ((least[i] ?? 0) + stray > best + MOST_COST) continue;
      const cost = (least[i] ?? 0) + this.offCost(guess) + stray;
      costs[i] = cost;
      best = Math.min(best, cost);
    }
    for (let i = 0; i < costs.length; i += 1) costs[i] = Math.min(MOST_COST, (costs[i] ?? 0) - best);
    return true;
  }

  learn(index: number): void {
    const guess = elementAt(this.guesses, index);
    const { gains, window } = this;
    gains.fit(guess);
    const partials: HeardPartial[] = [];
    guess.partials.forEach((id, p) => {
      if (gains.shareOf(p) < OWN_SHARE) return;
      partials.push({
        reed: Math.floor(id / MOST_HARMONICS),
        harmonic: id % MOST_HARMONICS,
        level: (window.observed[id] ?? 0) - gains.gainOf(guess.owners[p] ?? 0),
        off: Math.max(-MOST_OFF, Math.min(MOST_OFF, this.off(id, p))),
      });
    });
    this.profiles.learn(partials);
  }

  teach(levels: Float64Array, { hole, breath }: Pick<Sound, 'hole' | 'breath'>): void {
    const guess = this.guesses.findIndex(
      ({ holes, breath: own }) => holes.length === 1 && holes[0] === hole && own === breath,
    );
    if (guess >= 0 && this.window.take(levels)) this.learn(guess);
  }

  /** How far a partial lies off what the fitted gains come to, dB. */
  private off(id: number, p: number): number {
    const { window, gains } = this;
    return (window.observed[id] ?? 0) - 10 * Math.log10((gains.totals[p] ?? 0) + window.floorPower());
  }

  /** What peaks of the spectrum cost that none of these reeds explains. */
  private unexplained(reeds: Int32Array): number {
    let sum = 0;
    for (let k = 0; k < this.window.peakCount(); k += 1) {
      const over = Math.min(PEAK.most, this.window.peakOver(k, reeds) - PEAK.spare);
      if (over > 0) sum += over * over;
    }
    return sum / (2 * PEAK.stray * PEAK.stray);
  }

  /** What harmonics cost that lie off what is known; those in one place count once. */
  private offCost({ partials }: GripGuess): number {
    const { weights } = this.profiles;
    this.stamp += 1;
    let cost = 0;
    for (let p = 0; p < partials.length; p += 1) {
      const id = partials[p] ?? 0;
      const bin = this.window.bins[id] ?? 0;
      if (this.seen[bin] === this.stamp) continue;
      this.seen[bin] = this.stamp;
      const off = this.off(id, p);
      cost += Math.min(MOST_OFF * MOST_OFF, off * off) * (weights[id] ?? 0);
    }
    return cost;
  }
}
