import { gripShapes } from '../harp/grip-shapes';
import type { Breath } from '../harp/harp';
import { elementAt } from '../theory/element-at';
import { type ReedSpectrum, unitPower } from './reed-spectra';

/** What sounds together: holes of one breath, lowest first; one hole is a single note. */
export interface HeardGrip {
  readonly breath: Breath;
  readonly holes: readonly number[];
  /** Share of the spectrum that the grip leaves unexplained, 0–1: of two readings the lower is the surer. */
  readonly unexplained: number;
}

/** Tells which grip a power spectrum is; null for silence. */
export type RecogniseGrip = (power: Float64Array) => HeardGrip | null;

/**
 * Weak partials count as far as this power of theirs: with 1 only the strongest would speak, with 0 noise as loudly.
 * This and what follows were tuned on seeds 100–125 of the corpus.
 */
const EVENNESS = 0.5;
/** Partials below this share of the strongest are noise. */
const FAINT = 1e-4;
/** What another hole must explain to be believed, as share of the spectrum. */
const HOLE_COST = 0.01;
/** A hole of a grip sounds with at least this share of the loudest one's power. */
const SOFTEST_SHARE = 0.03;
const ROUNDS = 40;

interface Hypothesis {
  readonly breath: Breath;
  readonly holes: readonly number[];
  /** Places in the list of spectra. */
  readonly reeds: readonly number[];
}

/** Single notes, neighbours and splits on each breath whose every reed is known. */
const hypothesesOf = (spectra: readonly ReedSpectrum[]): readonly Hypothesis[] => {
  const last = Math.max(0, ...spectra.map(({ hole }) => hole));
  const single = Array.from({ length: last }, (_, i) => [i + 1]);
  const shapes = [...single, ...gripShapes(last).map(({ holes }) => holes)];
  const breaths: readonly Breath[] = ['blow', 'draw'];
  return breaths.flatMap((breath) =>
    shapes.flatMap((holes) => {
      const reeds = holes.map((hole) =>
        spectra.findIndex((each) => each.hole === hole && each.breath === breath),
      );
      return reeds.includes(-1) ? [] : [{ breath, holes, reeds }];
    }),
  );
};

const weightedDot = (a: Float64Array, b: Float64Array, weights: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < weights.length; i += 1) sum += (weights[i] ?? 0) * (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
};

interface Normal {
  /** Products of each spectrum with what is heard. */
  readonly toHeard: readonly number[];
  /** Products of the spectra with each other. */
  readonly between: readonly (readonly number[])[];
  /** Product of what is heard with itself. */
  readonly whole: number;
}

/** Least squares without negative shares, by going round the reeds (coordinate descent). */
const leastSquares = (reeds: readonly number[], { toHeard, between, whole }: Normal) => {
  const shares = reeds.map(() => 0);
  const product = (one: number, other: number): number => elementAt(elementAt(between, one), other);
  for (let round = 0; round < ROUNDS; round += 1) {
    reeds.forEach((reed, i) => {
      let left = toHeard[reed] ?? 0;
      reeds.forEach((other, j) => {
        if (j !== i) left -= product(reed, other) * (shares[j] ?? 0);
      });
      shares[i] = Math.max(0, left / product(reed, reed));
    });
  }
  let rest = whole;
  reeds.forEach((reed, i) => {
    rest -= 2 * (toHeard[reed] ?? 0) * (shares[i] ?? 0);
    reeds.forEach((other, j) => {
      rest += product(reed, other) * (shares[i] ?? 0) * (shares[j] ?? 0);
    });
  });
  return { shares, unexplained: Math.max(0, rest / whole) };
};

/**
 * Recognises grips of a harp whose reeds' spectra are known: non-negative least squares for every shape a mouth can
 * make on one breath, and the one that leaves least unexplained for the holes it takes.
 */
export const createGripRecogniser = (spectra: readonly ReedSpectrum[]): RecogniseGrip => {
  const hypotheses = hypothesesOf(spectra);
  return (power) => {
    const heard = unitPower(power);
    const strongest = heard.reduce((most, value) => Math.max(most, value), 0);
    if (strongest === 0 || hypotheses.length === 0) return null;
    const weights = heard.map((value) => (value + FAINT * strongest) ** (2 * (EVENNESS - 1)));
    const normal: Normal = {
      toHeard: spectra.map((each) => weightedDot(each.power, heard, weights)),
      between: spectra.map((one) => spectra.map((other) => weightedDot(one.power, other.power, weights))),
      whole: weightedDot(heard, heard, weights),
    };
    let best: { readonly grip: HeardGrip; readonly cost: number } | null = null;
    for (const { breath, holes, reeds } of hypotheses) {
      const { shares, unexplained } = leastSquares(reeds, normal);
      if (Math.min(...shares) < SOFTEST_SHARE * Math.max(...shares)) continue;
      const cost = unexplained + HOLE_COST * holes.length;
      if (best === null || cost < best.cost) best = { grip: { breath, holes, unexplained }, cost };
    }
    return best?.grip ?? null;
  };
};
