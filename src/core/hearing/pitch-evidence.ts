import { elementAt } from '../theory/element-at';
import type { Peak } from './lag-peaks';
import type { PitchGrid } from './pitch-grid';
import { createSoundBand } from './sound-band';

/** What is known of the hops before one. */
export interface HopsBefore {
  /** Whether a pitch has stood for a while. */
  readonly settled: boolean;
  /** Whether there was a note of late. */
  readonly note: boolean;
}

/** Tells how well each pitch explains the latest sound. */
export interface PitchEvidence {
  /** Takes the next hop in, and what is known of the hops before. */
  add(hop: Float64Array, before: HopsBefore): void;
  /** For every pitch of the grid, how well it explains the latest sound, in a window as its period asks for: higher is better. */
  readonly values: Float64Array;
  /** Likeness in that window at a pitch of the grid, where the bands that know it agree; 0 to 1. */
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
  /** Hops of the longest window. */
  readonly longest: number;
}

/** Where the bands meet, Hz: fundamentals below, the strong low harmonics between, brightness above. */
const EDGES = [1000, 2500] as const;
/** Added to what a pitch leaves unexplained, since no sound repeats exactly. */
const UNSTEADY = 0.1;
/** What the lowest band counts of the others, as that is where a band's instruments are strong. */
const LOW_SAY = 0.75;
const MOST_SAY = LOW_SAY + 2;
/**
 * A band with so little of the power is what filters let through of others, and has half a say; the lowest is often no
 * more than what a room keeps of a lower note before.
 */
const FAINT = { low: 1e-2, above: 1e-3 } as const;
/**
 * Evidence a pitch must have beyond that of one two to seven times as high, whose sound it repeats too: to be
 * preferred to that, soon after a beginning and later, and for there to be a pitch at all. What is left of the note
 * before often agrees with a fraction of the new one's pitch for a moment, which must not pass for a note, nor silence
 * a faint one.
 */
const OWN = { begun: 1.05, settled: 0.9, voiced: 0.6 } as const;
/** Evidence a pitch must have beyond one an octave higher, wherever that lies. */
const PER_OCTAVE = 0.3;
/** Say of a band in the period even where it tells nothing, so that there is always one. */
const LEAST_SAY = 1e-3;
const NOTHING = 1e-20;

/** Share of a band's energy that a pitch leaves unexplained. */
const unexplained = (likeness: number): number => {
  const like = Math.max(0, Math.min(1, likeness));
  return 1 + UNSTEADY - like * like;
};

const TABLE_SIZE = 2048;
/** What a band says of a pitch by its likeness there, at so many steps from 0 to 1: a logarithm a pitch is dear. */
const EXPLAINED = Float64Array.from(
  { length: TABLE_SIZE + 1 },
  (_, i) => -Math.log(unexplained(i / TABLE_SIZE)),
);
const explained = (likeness: number): number =>
  EXPLAINED[likeness > 0 ? Math.min(TABLE_SIZE, Math.round(likeness * TABLE_SIZE)) : 0] ?? 0;

/** How much a band has to say about a pitch, by its likeness there and its weight. */
const sayOf = (likeness: number, weight: number): number =>
  LEAST_SAY + weight * Math.log((1 + UNSTEADY) / unexplained(likeness));

/** What is taken from a pitch that goes so far beyond those of which it is a fraction: less where that is far. */
const shortfall = (beyond: number, own: number): number => Math.max(0, Math.min(own, 2 * own - beyond));

const at = (values: Float64Array, place: number): number => values[place] ?? Number.NEGATIVE_INFINITY;
/** The highest value at a place and beside it; none at −1. */
const around = (values: Float64Array, place: number): number =>
  place < 0
    ? Number.NEGATIVE_INFINITY
    : Math.max(at(values, place), at(values, place - 1), at(values, place + 1));

/** What is asked of a pitch, in units of evidence. */
interface Demands {
  /** Beyond those of which it is a fraction. */
  readonly own: number;
  /** How much of a say there is in all: less where only few bands sound. */
  readonly say: number;
}

/** Takes from the evidence of each pitch what those of which it is a fraction say as well, and what its lowness makes easy. */
const createPreference = (grid: PitchGrid): ((values: Float64Array, demands: Demands) => void) => {
  const higherBy = [2, 3, 4, 5, 6, 7].map((times) => grid.timesHigher(times));
  const { frequencies } = grid;
  const highest = elementAt(frequencies, frequencies.length - 1);
  const lowness = frequencies.map((frequency) => PER_OCTAVE * Math.log2(highest / frequency));
  /** From the lowest up, so that the pitches above are still as they were. */
  return (values, { own, say }) => {
    let voiced = Number.NEGATIVE_INFINITY;
    let preferred = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < values.length; i += 1) {
      let higher = Number.NEGATIVE_INFINITY;
      for (const places of higherBy) higher = Math.max(higher, around(values, places[i] ?? -1));
      const beyond = Math.max(0, (values[i] ?? 0) - higher);
      const value = (values[i] ?? 0) - say * (lowness[i] ?? 0);
      const chosen = value - shortfall(beyond, say * own);
      voiced = Math.max(voiced, value - shortfall(beyond, say * OWN.voiced));
      preferred = Math.max(preferred, chosen);
      values[i] = chosen;
    }
    for (let i = 0; i < values.length; i += 1) values[i] = (values[i] ?? 0) + voiced - preferred;
  };
};

/**
 * The sound is heard in three bands, each measured against itself: where a band of the sound is drowned, its likeness
 * is low at every lag and it has no say. Evidence is the log-likelihood of Gaussian remainders of unknown power.
 */
export const createPitchEvidence = ({ grid, rate, hop, longest }: EvidenceOptions): PitchEvidence => {
  const lags = grid.frequencies.map((frequency) => rate / frequency);
  const shared = { rate, hop, lags, longest };
  const low = createSoundBand({ ...shared, to: EDGES[0], keep: 4 });
  const middle = createSoundBand({ ...shared, from: EDGES[0], to: EDGES[1], keep: 2 });
  const high = createSoundBand({ ...shared, from: EDGES[1], keep: 1 });
  const bands = [low, middle, high];
  const values = new Float64Array(lags.length);
  const favourOwn = createPreference(grid);

  const weights = new Float64Array(bands.length);
  const weigh = (): void => {
    const all = bands.reduce((sum, band) => sum + band.power(), NOTHING);
    for (const [b, band] of bands.entries()) {
      const power = band.power();
      const [say, faint] = band === low ? [LOW_SAY, FAINT.low] : [1, FAINT.above];
      weights[b] = (say * power) / (power + faint * all);
    }
  };
  const saysOf = (place: number): readonly number[] =>
    bands.map((band, b) => sayOf(band.likeness[place] ?? 0, weights[b] ?? 0));

  return {
    values,
    add(samples, { settled, note }) {
      for (const band of bands) band.add(samples, note);
      weigh();
      const [a = 0, b = 0, c = 0] = weights;
      for (let i = 0; i < values.length; i += 1) {
        values[i] =
          a * explained(low.likeness[i] ?? 0) +
          b * explained(middle.likeness[i] ?? 0) +
          c * explained(high.likeness[i] ?? 0);
      }
      favourOwn(values, { own: settled ? OWN.settled : OWN.begun, say: (a + b + c) / MOST_SAY });
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
