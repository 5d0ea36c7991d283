import { MOST_HARMONICS, type ReedProfiles } from './reed-profiles';

/** What a window of sound has at the harmonics of every reed, and its peaks. */
export interface WindowPartials {
  /** Takes a spectrum in dB; false where it is silence, or noise, or moves too fast to be told. */
  take(levels: Float64Array): boolean;
  /** Level at each harmonic, at least the floor, dB, counted `reed * MOST_HARMONICS + harmonic`; and where it was found. */
  readonly observed: Float64Array;
  readonly bins: Int32Array;
  /** Power of what counts as noise. */
  floorPower(): number;
  peakCount(): number;
  /** How far a peak stands out of what these reeds explain, dB. */
  peakOver(peak: number, reeds: Int32Array): number;
}

/** What is so far below the loudest is noise, dB. */
const FLOOR = -38;
/** Levels below which a window is silence, dB. */
const SILENCE = -90;
/**
 * The highest peaks of tones stand so far out of what lies so many bins beside them, dB; those of noise and of glides do
 * not (in the generated corpus 99 % of chords are above 29, and of noise below 19).
 */
const TONAL = { peaks: 6, beside: 3, least: 25 } as const;
/** How far from its place a harmonic is looked for: bins, and share of its frequency. */
const REACH = { bins: 1, share: 0.005 } as const;
/** How much wider than it is in theory a harmonic is, as breath moves it: bins, and share of its place. */
const WIDER = { bins: 0.3, share: 0.004 } as const;
/** A partial explains peaks up to so many bins away. */
const COVERS = 12;
const MOST_PEAKS = 512;

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
/** The skirts of a partial, as breath and side lobes make them: from so many bins on, and their power there. */
const SKIRT = { at: 2.5, power: 1e-4 } as const;
/** Partials further apart than so many bins do not touch. */
export const KERNEL_REACH = 4;

/** Power of a partial so many bins from its place, under a raised cosine; 1 in it. */
export const kernelAt = (bins: number): number => {
  const apart = Math.abs(bins);
  if (apart >= SKIRT.at) return SKIRT.power * (SKIRT.at / apart) ** 4;
  return Math.max(SKIRT.power, (sinc(apart) + 0.5 * (sinc(apart - 1) + sinc(apart + 1))) ** 2);
};

const STEPS = 8;
const KERNEL_LEVELS = Float64Array.from(
  { length: COVERS * STEPS + 1 },
  (_, i) => 10 * Math.log10(kernelAt(i / STEPS)),
);

/** For spectra of bins of so many Hz. */
export const createWindowPartials = (profiles: ReedProfiles, binHz: number): WindowPartials =>
  new Partials(profiles, binHz);

class Partials implements WindowPartials {
  readonly observed: Float64Array;
  readonly bins: Int32Array;
  private readonly peaks = new Int32Array(MOST_PEAKS);
  private readonly peakLevels = new Float64Array(MOST_PEAKS);
  /** What each reed explains at each peak, dB: of all reeds one after the other. */
  private readonly covers: Float64Array;
  private readonly counted = new Uint8Array(MOST_PEAKS);
  private readonly profiles: ReedProfiles;
  private readonly binHz: number;
  private count = 0;
  private floor = 0;
  private power = 0;

  constructor(profiles: ReedProfiles, binHz: number) {
    this.profiles = profiles;
    this.binHz = binHz;
    const { reeds } = profiles;
    this.observed = new Float64Array(reeds.length * MOST_HARMONICS);
    this.bins = new Int32Array(reeds.length * MOST_HARMONICS);
    this.covers = new Float64Array(reeds.length * MOST_PEAKS);
  }

  take(levels: Float64Array): boolean {
    let most = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < levels.length; k += 1) most = Math.max(most, levels[k] ?? most);
    if (most < SILENCE) return false;
    this.floor = most + FLOOR;
    this.power = 10 ** (this.floor / 10);
    this.findPeaks(levels);
    if (this.tonality(levels) < TONAL.least) return false;
    this.findPartials(levels);
    this.cover();
    return true;
  }

  floorPower(): number {
    return this.power;
  }

  peakCount(): number {
    return this.count;
  }

  peakOver(peak: number, own: Int32Array): number {
    let most = this.floor;
    for (let i = 0; i < own.length; i += 1) {
      const level = this.covers[MOST_PEAKS * (own[i] ?? 0) + peak] ?? 0;
      if (level > most) most = level;
    }
    return (this.peakLevels[peak] ?? 0) - most;
  }

  private findPeaks(levels: Float64Array): void {
    this.count = 0;
    for (let k = 1; k + 1 < levels.length && this.count < MOST_PEAKS; k += 1) {
      const here = levels[k] ?? 0;
      if (here <= this.floor || here < (levels[k - 1] ?? 0) || here <= (levels[k + 1] ?? 0)) continue;
      this.peaks[this.count] = k;
      this.peakLevels[this.count] = here;
      this.count += 1;
    }
  }

  /** How far the highest peaks stand out, dB. */
  private tonality(levels: Float64Array): number {
    const { counted, peaks, peakLevels, count } = this;
    counted.fill(0, 0, count);
    const most = Math.min(TONAL.peaks, count);
    let sum = 0;
    for (let n = 0; n < most; n += 1) {
      let top = -1;
      for (let k = 0; k < count; k += 1)
        if (counted[k] === 0 && (top < 0 || (peakLevels[k] ?? 0) > (peakLevels[top] ?? 0))) top = k;
      counted[top] = 1;
      const bin = peaks[top] ?? 0;
      const lower = levels[bin - TONAL.beside] ?? 0;
      const upper = levels[bin + TONAL.beside] ?? 0;
      sum += (peakLevels[top] ?? 0) - Math.min(lower, upper);
    }
    return most === 0 ? 0 : sum / most;
  }

  private findPartials(levels: Float64Array): void {
    this.profiles.reeds.forEach(({ hz, count }, r) => {
      for (let h = 0; h < count; h += 1) {
        const place = ((h + 1) * hz) / this.binHz;
        const reach = Math.max(REACH.bins, REACH.share * place);
        let best = Math.round(place);
        for (let k = Math.ceil(place - reach); k <= place + reach; k += 1)
          if ((levels[k] ?? 0) > (levels[best] ?? 0)) best = k;
        this.observed[r * MOST_HARMONICS + h] = Math.max(this.floor, levels[best] ?? this.floor);
        this.bins[r * MOST_HARMONICS + h] = best;
      }
    });
  }

  private cover(): void {
    const { peaks, count, floor } = this;
    this.profiles.reeds.forEach((reed, r) => {
      const mine = this.covers.subarray(MOST_PEAKS * r, MOST_PEAKS * (r + 1));
      mine.fill(floor, 0, count);
      let from = 0;
      for (let h = 0; h < reed.count; h += 1) {
        const bin = this.bins[r * MOST_HARMONICS + h] ?? 0;
        const level = this.observed[r * MOST_HARMONICS + h] ?? 0;
        const wider = WIDER.bins + WIDER.share * bin;
        while (from < count && (peaks[from] ?? 0) < bin - COVERS) from += 1;
        for (let k = from; k < count && (peaks[k] ?? 0) <= bin + COVERS; k += 1) {
          const apart = Math.max(0, Math.abs((peaks[k] ?? 0) - bin) - wider);
          const here = level + (KERNEL_LEVELS[Math.round(apart * STEPS)] ?? 0);
          if (here > (mine[k] ?? 0)) mine[k] = here;
        }
      }
    });
  }
}
