import { gripShapes } from '../harp/grip-shapes';
import { BREATHS, type Breath } from '../harp/harp';
import { elementAt } from '../theory/element-at';
import { MOST_HARMONICS, type ReedProfiles } from './reed-profiles';
import { KERNEL_REACH, kernelAt } from './window-partials';

/**
 * What may sound: holes of one breath, lowest first; one hole is a single note. With what never changes of it. Partials
 * are counted `reed * MOST_HARMONICS + harmonic`.
 */
export interface GripGuess {
  readonly breath: Breath;
  readonly holes: readonly number[];
  /** Whether all its reeds are in unison with harmonics of the lowest, as octaves are. */
  readonly unison: boolean;
  /** Places in the list of reeds. */
  readonly reeds: Int32Array;
  readonly partials: Int32Array;
  /** Which of `reeds` each belongs to. */
  readonly owners: Int32Array;
  readonly pairs: PartialPairs;
}

/** Partials of different reeds in the same place, by their places in `partials`, and how much of `of` is seen at `at`. */
export interface PartialPairs {
  readonly at: Int32Array;
  readonly of: Int32Array;
  readonly share: Float64Array;
}

/** Reeds so near a multiple of the lowest are in unison with its harmonics. Octaves. */
const UNISON = 20 / 1200;

const isUnison = (pitches: readonly number[]): boolean => {
  const lowest = Math.min(...pitches);
  return pitches.every((hz) => Math.abs(Math.log2(hz / lowest / Math.round(hz / lowest))) < UNISON);
};

interface Place {
  readonly id: number;
  readonly owner: number;
  readonly bin: number;
}

const placesOf = (reeds: readonly number[], profiles: ReedProfiles, binHz: number): readonly Place[] =>
  reeds.flatMap((reed, owner) => {
    const { hz, count } = elementAt(profiles.reeds, reed);
    return Array.from({ length: count }, (_, i) => ({
      id: reed * MOST_HARMONICS + i,
      owner,
      bin: ((i + 1) * hz) / binHz,
    }));
  });

const pairsOf = (places: readonly Place[]): PartialPairs => {
  const at: number[] = [];
  const of: number[] = [];
  const share: number[] = [];
  for (let i = 0; i < places.length; i += 1) {
    const one = elementAt(places, i);
    for (let j = 0; j < places.length; j += 1) {
      const other = elementAt(places, j);
      const apart = Math.abs(one.bin - other.bin);
      if (one.owner === other.owner || apart > KERNEL_REACH) continue;
      at.push(i);
      of.push(j);
      share.push(kernelAt(apart));
    }
  }
  return { at: Int32Array.from(at), of: Int32Array.from(of), share: Float64Array.from(share) };
};

const NO_PAIRS = pairsOf([]);

const guessOf = (reeds: readonly number[], profiles: ReedProfiles, binHz: number) => {
  const places = placesOf(reeds, profiles, binHz);
  return {
    unison: isUnison(reeds.map((reed) => elementAt(profiles.reeds, reed).hz)),
    reeds: Int32Array.from(reeds),
    partials: Int32Array.from(places, ({ id }) => id),
    owners: Int32Array.from(places, ({ owner }) => owner),
    pairs: pairsOf(places),
  };
};

/** Single notes, neighbours and splits on each breath, for spectra of bins of so many Hz. */
export const gripGuesses = (profiles: ReedProfiles, binHz: number): readonly GripGuess[] => {
  const { reeds } = profiles;
  const last = Math.max(0, ...reeds.map(({ sound }) => sound?.hole ?? 0));
  const single = Array.from({ length: last }, (_, i) => [i + 1]);
  const shapes = [...single, ...gripShapes(last).map(({ holes }) => holes)];
  return BREATHS.flatMap((breath) =>
    shapes.flatMap((holes) => {
      const own = holes.map((hole) =>
        reeds.findIndex(({ sound }) => sound?.hole === hole && sound.breath === breath),
      );
      return own.includes(-1) ? [] : [{ breath, holes, ...guessOf(own, profiles, binHz) }];
    }),
  );
};

/** Single notes of the pitch that is followed, which have no hole: for each number of harmonics the one with so many. */
export const followedGuesses = (profiles: ReedProfiles): readonly GripGuess[] => {
  const reed = profiles.reeds.length - 1;
  return Array.from({ length: MOST_HARMONICS + 1 }, (_, count) => ({
    breath: 'blow',
    holes: [],
    unison: true,
    reeds: Int32Array.of(reed),
    partials: Int32Array.from({ length: count }, (_, i) => reed * MOST_HARMONICS + i),
    owners: new Int32Array(count),
    pairs: NO_PAIRS,
  }));
};
