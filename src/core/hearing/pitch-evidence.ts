import { elementAt } from '../theory/element-at';
import type { Peak } from './lag-peaks';
import type { PitchGrid } from './pitch-grid';
import { createSoundBand } from './sound-band';

/** Tells how well each pitch explains the latest sound. */
export interface PitchEvidence {
  /** Takes the next hop in. */
  add(hop: Float64Array): void;
  /** For every pitch of the grid, how well it explains the shortest window: higher is better. */
  readonly values: Float64Array;
  /** Likeness of the shortest window at a pitch of the grid, where the bands that know it agree; 0 to 1. */
  likenessAt(place: number): number;
  /** The period near a pitch of the grid in the last `hops` hops, in samples, and how alike it is from one to the next. */
  periodAt(place: number, hops: number): Peak;
}

export interface EvidenceOptions {
  readonly grid: PitchGrid;
  /** Hz. */
  readonly rate: number;
  /** Samples in a hop, a multiple of 4. */
  readonly hop: number;
  /** Hops. */
  readonly window: { readonly shortest: number; readonly longest: number };
}

/** Where the bands meet, Hz: fundamentals below, the strong low harmonics between, brightness above. */
const EDGES = [1000, 2500] as const;
/** Added to what a pitch leaves unexplained, since no sound repeats exactly. */
const UNSTEADY = 0.1;
/** Evidence a pitch must have beyond that of one two, three or four times as high, whose sound it repeats too. */
const OWN = 0.6;
/** Evidence a pitch must have beyond one an octave higher, wherever that lies. */
const PER_OCTAVE = 0.3;
/** Say of a band in the period even where it tells nothing, so that there is always one. */
const LEAST_SAY = 1e-3;

/** Share of a band's energy that a pitch leaves unexplained. */
const unexplained = (likeness: number): number => {
  const like = Math.max(0, Math.min(1, likeness));
  return 1 + UNSTEADY - like * like;
};

/** How much a band has to say about a pitch, by its likeness there and its weight. */
const sayOf = (likeness: number, weight: number): number =>
  LEAST_SAY + weight * Math.log((1 + UNSTEADY) / unexplained(likeness));

/** Takes from the evidence of each pitch what those of which it is a fraction say as well, and what its lowness makes easy. */
const createPreference = (grid: PitchGrid): ((values: Float64Array) => void) => {
  const [twice, thrice, fourTimes] = [grid.timesHigher(2), grid.timesHigher(3), grid.timesHigher(4)];
  const { frequencies } = grid;
  const highest = elementAt(frequencies, frequencies.length - 1);
  const lowness = frequencies.map((frequency) => PER_OCTAVE * Math.log2(highest / frequency));
  /** From the lowest up, so that the pitches above are still as they were. */
  return (values) => {
    const valueAt = (place: number): number => values[place] ?? Number.NEGATIVE_INFINITY;
    const around = (place: number | undefined): number =>
      place === undefined || place < 0
        ? Number.NEGATIVE_INFINITY
        : Math.max(valueAt(place), valueAt(place - 1), valueAt(place + 1));
    for (let i = 0; i < values.length; i += 1) {
      const higher = Math.max(around(twice[i]), around(thrice[i]), around(fourTimes[i]));
      const beyond = Math.max(0, (values[i] ?? 0) - higher) / OWN;
      if (beyond < 2) values[i] = (values[i] ?? 0) - OWN * Math.min(1, 2 - beyond);
      values[i] = (values[i] ?? 0) - (lowness[i] ?? 0);
    }
  };
};

/**
 * The sound is heard in three bands, each measured against itself: where a band of the sound is drowned, its likeness
 * is low at every lag and it has no say. Evidence is the log-likelihood of Gaussian remainders of unknown power; the
 * lowest band counts half, as that is where a band's instruments are strong.
 */
export const createPitchEvidence = ({ grid, rate, hop, window }: EvidenceOptions): PitchEvidence => {
  const lags = grid.frequencies.map((frequency) => rate / frequency);
  const shared = { rate, hop, lags, window };
  const low = createSoundBand({ ...shared, to: EDGES[0], keep: 4 });
  const middle = createSoundBand({ ...shared, from: EDGES[0], to: EDGES[1], keep: 2 });
  const high = createSoundBand({ ...shared, from: EDGES[1], keep: 1 });
  const bands = [low, middle, high];
  const values = new Float64Array(lags.length);
  const favourOwn = createPreference(grid);

  const saysOf = (place: number): readonly number[] =>
    bands.map((band) => sayOf(band.likeness[place] ?? 0, band === low ? 0.5 : 1));

  return {
    values,
    add(samples) {
      for (const band of bands) band.add(samples);
      for (let i = 0; i < values.length; i += 1) {
        values[i] = -Math.log(
          Math.sqrt(unexplained(low.likeness[i] ?? 0)) *
            unexplained(middle.likeness[i] ?? 0) *
            unexplained(high.likeness[i] ?? 0),
        );
      }
      favourOwn(values);
    },
    likenessAt(place) {
      const says = saysOf(place);
      const sum = bands.reduce(
        (total, { likeness }, b) => total + (says[b] ?? 0) * Math.max(0, likeness[place] ?? 0),
        0,
      );
      return Math.min(1, sum / says.reduce((total, say) => total + say, 0));
    },
    periodAt(place, hops) {
      const says = saysOf(place);
      let [lag, height, total] = [0, 0, 0];
      for (const [b, band] of bands.entries()) {
        const peak = (grid.frequencies[place] ?? 0) < band.to ? band.peak(hops, lags[place] ?? 0) : undefined;
        if (peak === undefined) continue;
        lag += (says[b] ?? 0) * peak.lag;
        height += (says[b] ?? 0) * peak.height;
        total += says[b] ?? 0;
      }
      if (total === 0) return { lag: lags[place] ?? 0, height: 0 };
      return { lag: lag / total, height: height / total };
    },
  };
};
