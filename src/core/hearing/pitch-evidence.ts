import { explained, UNSTEADY, unexplained } from '../signal/explained';
import { createUpperRise } from '../signal/upper-rise';
import { elementAt } from '../theory/element-at';
import { createDeniedPitches } from './denied-pitches';
import type { Peak } from './lag-peaks';
import { higherPlaces, MULTIPLES, type PitchGrid, widen } from './pitch-grid';
import { createSoundBand, type SoundBand } from './sound-band';

/** What is known of a hop and those before it. */
export interface HopsBefore {
  /** Whether a pitch has stood for a while. */
  readonly settled: boolean;
  /** Whether there was a note of late. */
  readonly note: boolean;
  /** Whether the hop itself is silence, of which nothing is asked. */
  readonly silent: boolean;
}

/** Tells how well each pitch explains the latest sound. */
export interface PitchEvidence {
  /** Takes the next hop in, and what is known of it and the hops before; in silence no pitch explains anything. */
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
/**
 * What the lowest band counts of the others, as that is where a band's instruments are strong; with less, reeds whose
 * third harmonic is the loudest were heard a twelfth too high over a band.
 */
const LOW_SAY = 0.9;
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
const NO_MORE = new Float64Array(0);

/** How much a band has to say about a pitch, by its likeness there and its weight. */
const sayOf = (likeness: number, weight: number): number =>
  LEAST_SAY + weight * Math.log((1 + UNSTEADY) / unexplained(likeness));

/** What is taken from a pitch that goes so far beyond those of which it is a fraction: less where that is far. */
const shortfall = (beyond: number, own: number): number => Math.max(0, Math.min(own, 2 * own - beyond));

/** What is asked of a pitch, in units of evidence. */
interface Demands {
  /** Beyond those of which it is a fraction. */
  readonly own: number;
  /** Besides, of each pitch; nothing where it is empty. */
  readonly more: Float64Array;
  /** How much of a say there is in all: less where only few bands sound. */
  readonly say: number;
}

/** Takes from the evidence of each pitch what those of which it is a fraction say as well, and what its lowness makes easy. */
const createPreference = (grid: PitchGrid): ((values: Float64Array, demands: Demands) => void) => {
  const higher = higherPlaces(grid);
  const { frequencies } = grid;
  const highest = elementAt(frequencies, frequencies.length - 1);
  const lowness = frequencies.map((frequency) => PER_OCTAVE * Math.log2(highest / frequency));
  const wide = new Float64Array(frequencies.length + 1);
  // The higher a pitch, the fewer of its multiples a harp has; the highest octave has none.
  const counts = Uint8Array.from(frequencies, (_, i) => {
    const own = higher.subarray(MULTIPLES * i, MULTIPLES * (i + 1));
    return own.findLastIndex((place) => place < frequencies.length) + 1;
  });
  return (values, { own, more, say }) => {
    widen(values, wide);
    const voicedSay = say * OWN.voiced;
    let voiced = Number.NEGATIVE_INFINITY;
    let preferred = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < values.length; i += 1) {
      let most = Number.NEGATIVE_INFINITY;
      const end = MULTIPLES * i + (counts[i] ?? 0);
      for (let h = MULTIPLES * i; h < end; h += 1) {
        const each = wide[higher[h] ?? 0] ?? 0;
        if (each > most) most = each;
      }
      const here = values[i] ?? 0;
      const beyond = Math.max(0, here - most);
      const value = here - say * (lowness[i] ?? 0);
      const chosen = value - shortfall(beyond, say * (own + (i < more.length ? (more[i] ?? 0) : 0)));
      voiced = Math.max(voiced, value - shortfall(beyond, voicedSay));
      preferred = Math.max(preferred, chosen);
      values[i] = chosen;
    }
    const back = voiced - preferred;
    for (let i = 0; i < values.length; i += 1) values[i] = (values[i] ?? 0) + back;
  };
};

/** How much of a say each band has, the lowest first. */
const weigh = (bands: readonly SoundBand[], weights: Float64Array): void => {
  let all = NOTHING;
  for (let b = 0; b < bands.length; b += 1) all += elementAt(bands, b).power();
  for (let b = 0; b < bands.length; b += 1) {
    const power = elementAt(bands, b).power();
    const say = b === 0 ? LOW_SAY : 1;
    const faint = b === 0 ? FAINT.low : FAINT.above;
    weights[b] = (say * power) / (power + faint * all);
  }
};

/** Likeness at a place, where the bands that know it agree. */
const likenessOf = (bands: readonly SoundBand[], says: Float64Array, place: number): number => {
  let sum = 0;
  let all = 0;
  for (let b = 0; b < bands.length; b += 1) {
    const say = says[b] ?? 0;
    sum += say * Math.max(0, elementAt(bands, b).likeness[place] ?? 0);
    all += say;
  }
  return Math.min(1, sum / all);
};

/** The period near that of a pitch in the last hops, by what the bands that reach up to the pitch say of it. */
const periodNear = (
  bands: readonly SoundBand[],
  says: Float64Array,
  hops: number,
  { hz, lag: near }: { readonly hz: number; readonly lag: number },
): Peak => {
  let lag = 0;
  let height = 0;
  let total = 0;
  for (let b = 0; b < bands.length; b += 1) {
    const band = elementAt(bands, b);
    const peak = hz < band.to ? band.peak(hops, near) : undefined;
    if (peak === undefined) continue;
    const say = says[b] ?? 0;
    lag += say * peak.lag;
    height += say * peak.height;
    total += say;
  }
  if (total === 0) return { lag: near, height: 0 };
  return { lag: lag / total, height: height / total };
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
  const deniedBy = createDeniedPitches(grid, EDGES);
  const hasRisen = createUpperRise();
  const weights = new Float64Array(bands.length);
  const says = new Float64Array(bands.length);
  const saysOf = (place: number): Float64Array => {
    for (let b = 0; b < bands.length; b += 1)
      says[b] = sayOf(elementAt(bands, b).likeness[place] ?? 0, weights[b] ?? 0);
    return says;
  };

  return {
    values,
    add(samples, { settled, note, silent }) {
      for (const band of bands) band.add(samples, note, silent);
      const risen = hasRisen(low.power(), middle.power(), high.power());
      if (silent) {
        values.fill(0);
        return;
      }
      weigh(bands, weights);
      const a = weights[0] ?? 0;
      const b = weights[1] ?? 0;
      const c = weights[2] ?? 0;
      for (let i = 0; i < values.length; i += 1) {
        values[i] =
          a * explained(low.likeness[i] ?? 0) +
          b * explained(middle.likeness[i] ?? 0) +
          c * explained(high.likeness[i] ?? 0);
      }
      const more = risen ? deniedBy(values, middle.likeness, high.likeness) : NO_MORE;
      favourOwn(values, { own: settled ? OWN.settled : OWN.begun, more, say: (a + b + c) / MOST_SAY });
    },
    likenessAt: (place) => likenessOf(bands, saysOf(place), place),
    periodAt: (place, hops) =>
      periodNear(bands, saysOf(place), hops, { hz: grid.frequencies[place] ?? 0, lag: lags[place] ?? 0 }),
  };
};
