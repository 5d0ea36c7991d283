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
  const parts = [2, 3, 4].map((times) => grid.timesHigher(times));
  const lowness = lags.map((lag) => PER_OCTAVE * Math.log2(lag / lags[lags.length - 1]));

  const weigh = (): void => {
    for (let i = 0; i < values.length; i += 1) {
      values[i] = -Math.log(
        Math.sqrt(unexplained(low.likeness[i])) *
          unexplained(middle.likeness[i]) *
          unexplained(high.likeness[i]),
      );
    }
  };

  const around = (place: number): number =>
    place < 0 ? Number.NEGATIVE_INFINITY : Math.max(values[place], values[place - 1], values[place + 1] ?? 0);

  /** From the lowest up, so that the pitches above are still as they were. */
  const favourOwn = (): void => {
    for (let i = 0; i < values.length; i += 1) {
      const higher = Math.max(around(parts[0][i]), around(parts[1][i]), around(parts[2][i]));
      const beyond = Math.max(0, values[i] - higher) / OWN;
      if (beyond < 2) values[i] -= OWN * Math.min(1, 2 - beyond);
      values[i] -= lowness[i];
    }
  };

  const sayOf = (place: number) => (_: unknown, b: number) =>
    LEAST_SAY + (b === 0 ? 0.5 : 1) * Math.log((1 + UNSTEADY) / unexplained(bands[b].likeness[place]));

  return {
    values,
    add(samples) {
      for (const band of bands) band.add(samples);
      weigh();
      favourOwn();
    },
    likenessAt(place) {
      const says = bands.map(sayOf(place));
      const sum = bands.reduce((total, { likeness }, b) => total + says[b] * Math.max(0, likeness[place]), 0);
      return Math.min(1, sum / says.reduce((total, say) => total + say, 0));
    },
    periodAt(place, hops) {
      const says = bands.map(sayOf(place));
      let [lag, height, total] = [0, 0, 0];
      for (const [b, band] of bands.entries()) {
        const peak = grid.frequencies[place] < band.to ? band.peak(hops, lags[place]) : undefined;
        if (peak === undefined) continue;
        lag += says[b] * peak.lag;
        height += says[b] * peak.height;
        total += says[b];
      }
      return total === 0 ? { lag: lags[place], height: 0 } : { lag: lag / total, height: height / total };
    },
  };
};
