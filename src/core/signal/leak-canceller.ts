import { createLeakDelay } from './leak-delay';
import { createLeakFilter } from './leak-filter';
import { createSteadyDelay } from './steady-delay';

/** Takes the band's own sound out of what the microphone hears. */
export interface LeakCanceller {
  /** Fills `rest` with what was heard without the band; both hops are of the working rate. */
  step(sent: Float64Array, heard: Float64Array, rest: Float64Array): void;
  /** Mean square below which the rest of the latest hop may be what the filter missed of the band. */
  residue(): number;
  /** Mean square below which it most likely is, as the filter has not learned enough yet. */
  unlearned(): number;
  /** Samples that the band takes to come back; null where it does not, or not for long enough yet. */
  delay(): number | null;
}

/** Hops: the filter lasts 85 ms at 24 kHz and begins up to 340 ms after the sound was sent. */
const PARTITIONS = 16;
const LATEST = 64;
/** Hops: at either end of what is looked at stands what is left where nothing comes back; no machine is as fast. */
const BELIEVED = { from: 1, to: 60 } as const;
/** Samples of the filter before the peak that was found: the peak need not be the first sound to arrive. */
const LEAD = 200;

/** What is left of the leak's power a hop later, in a room that takes almost a second to fall silent. */
const FADING = 0.92;
/**
 * How far the rest is below the leak where the player pauses is learned from its lowest ratios, in dB: how fast they
 * are believed, falling and rising; how far the rest reaches above them; and the ends of what may be concluded, as a
 * player who never pauses teaches too high a ratio.
 */
const MISSED = { first: -3, falling: 0.1, rising: 0.05, above: 17, least: -25, most: -10 } as const;
/**
 * What the filter reckons to have missed fades by this from hop to hop, and so much of it hides the player: its doubt
 * begins with speakers louder than there are.
 */
const UNLEARNED = { fading: 0.7, share: 0.25 } as const;
/** Share of a hop in the smoothed power of the rest. */
const SMOOTHING = 0.2;
const NOTHING = 1e-10;

const meanSquare = (hop: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < hop.length; i += 1) sum += (hop[i] ?? 0) * (hop[i] ?? 0);
  return sum / hop.length;
};

/** A canceller for hops of so many samples, a power of two. */
export const createLeakCanceller = (hop: number): LeakCanceller => {
  const delay = createLeakDelay(hop);
  const steady = createSteadyDelay();
  const filter = createLeakFilter({ hop, partitions: PARTITIONS, latest: LATEST });
  const leak = new Float64Array(hop);
  let start = -1;
  let leakPower = 0;
  let restPower = 0;
  let doubt = 0;
  let ratio = MISSED.first;

  const aim = (found: number | undefined): void => {
    if (found === undefined) return;
    if (found > BELIEVED.from * hop && found < BELIEVED.to * hop) steady.take(found);
    const wanted = Math.max(0, (found - LEAD) / hop);
    // Drift of less than a hop is the filter's to follow; it moves only when the peak leaves its place.
    if (start >= 0 && Math.abs(wanted - start - 0.5) < 1) return;
    start = Math.min(LATEST, Math.floor(wanted));
    filter.startAt(start);
  };

  const compare = (rest: Float64Array): void => {
    leakPower = Math.max(meanSquare(leak), FADING * leakPower);
    restPower += SMOOTHING * (meanSquare(rest) - restPower);
    if (leakPower < NOTHING) return;
    const now = 10 * Math.log10((restPower + NOTHING) / leakPower);
    ratio += now < ratio ? MISSED.falling * (now - ratio) : Math.min(now - ratio, MISSED.rising);
  };

  return {
    step(sent, heard, rest) {
      aim(delay.step(sent, heard));
      filter.step({ sent, heard, rest, leak });
      compare(rest);
      doubt = Math.max(filter.doubt(), UNLEARNED.fading * doubt);
    },
    delay: steady.now,
    unlearned: () => UNLEARNED.share * doubt,
    residue() {
      const below = Math.max(MISSED.least, Math.min(MISSED.most, ratio + MISSED.above));
      return leakPower * 10 ** (below / 10);
    },
  };
};
