import type { Harp, Sound } from '../harp/harp';
import { soundHz } from '../harp/intonation';
import { soundId } from '../harp/tab';
import { elementAt } from '../theory/element-at';
import { STANDARD_PITCH } from '../theory/temperament';
import type { Hz } from '../theory/units';
import type { KnownReeds } from './known-reeds';

/** What is expected of the harmonics of one reed. */
export interface ReedProfile {
  /** Null for the pitch that is followed, which may be a bend. */
  readonly sound: Sound | null;
  /** Hz; 0 where no pitch is followed. */
  hz: number;
  /** Harmonics that are looked at. */
  count: number;
  /** Expected level of each re the reed's own, dB. */
  readonly levels: Float64Array;
  /** The same as power. */
  readonly powers: Float64Array;
  /** How much a deviation of a dB, squared, speaks against it. */
  readonly weights: Float64Array;
}

/** A harmonic that was heard of one reed alone: its level re the reed's own, and how far that lay from what was expected. dB. */
export interface HeardPartial {
  readonly reed: number;
  /** From 0. */
  readonly harmonic: number;
  readonly level: number;
  readonly off: number;
}

/** The reeds of a harp, as they are known so far. */
export interface ReedProfiles {
  /** The natural notes, and last the pitch that is followed. */
  readonly reeds: readonly ReedProfile[];
  /** Those of all reeds one after the other, counted `reed * MOST_HARMONICS + harmonic`. */
  readonly levels: Float64Array;
  readonly powers: Float64Array;
  readonly weights: Float64Array;
  /** Follows a pitch, Hz; 0 for none. */
  follow(hz: number): void;
  /** Learns from one window. */
  learn(partials: readonly HeardPartial[]): void;
  /** What is known by now, to be kept: rounded, without reeds that were never heard. */
  known(): KnownReeds;
}

/** Most harmonics looked at, and the highest, Hz. */
export const MOST_HARMONICS = 22;
const HIGHEST = 5000;
/** Before anything was heard: each octave of harmonics is so much softer. dB. */
const FALL = 5.5;
/** How far harmonics of a reed stray from that, and, once it was heard often, from what it was. dB. */
const STRAY = { unknown: 5.5, known: 3 } as const;
/** How fast what reeds of this harp have in common is learnt: by number of harmonic, and by frequency. */
const COMMON = { harmonic: 0.02, colour: 0.02 } as const;
/** Windows after which a reed is believed as much as what is expected of any. */
const HALF_KNOWN = 6;
/** Most windows a reed's memory holds: what changes with mouth and hands is followed. */
const MOST_WINDOWS = 60;
/** Bands of frequency an octave. */
const BANDS = 3;

const bandOf = (hz: number): number => Math.max(0, Math.round(BANDS * Math.log2(hz / 80)));

/** What is known of a reed itself. */
interface Own {
  /** Level of each harmonic as it was heard. */
  readonly mean: Float64Array;
  readonly windows: Float64Array;
  readonly bands: Int32Array;
}

const countOf = (hz: number): number => (hz > 0 ? Math.min(MOST_HARMONICS, Math.floor(HIGHEST / hz)) : 0);

const tenths = (values: Float64Array, count = values.length): readonly number[] =>
  Array.from(values.subarray(0, count), (value) => Math.round(10 * value) / 10);

/**
 * The reeds of a harp, with what is known of them from before; of a harp whose reeds nobody has heard yet when that is
 * absent. Throws RangeError on a reference outside 440–446 Hz.
 */
export const createReedProfiles = (
  harp: Harp,
  reference: Hz = STANDARD_PITCH,
  known: KnownReeds | null = null,
): ReedProfiles => new Profiles(harp, reference, known);

class Profiles implements ReedProfiles {
  readonly reeds: readonly ReedProfile[];
  readonly levels: Float64Array;
  readonly powers: Float64Array;
  readonly weights: Float64Array;
  private readonly naturals: readonly ReedProfile[];
  private readonly followed: ReedProfile;
  private readonly own: readonly Own[];
  private readonly common = new Float64Array(MOST_HARMONICS);
  private readonly colour = new Float64Array(bandOf(HIGHEST) + 1);

  constructor(harp: Harp, reference: Hz, known: KnownReeds | null) {
    const sounds = harp.sounds.filter(({ technique }) => technique === 'natural');
    this.levels = new Float64Array((sounds.length + 1) * MOST_HARMONICS);
    this.powers = new Float64Array(this.levels.length);
    this.weights = new Float64Array(this.levels.length);
    this.naturals = sounds.map((sound, r) => this.unheard(r, sound, soundHz(sound, reference)));
    this.followed = this.unheard(sounds.length, null, 0);
    this.reeds = [...this.naturals, this.followed];
    this.own = this.naturals.map(({ hz }) => ({
      mean: new Float64Array(MOST_HARMONICS),
      windows: new Float64Array(MOST_HARMONICS),
      bands: Int32Array.from({ length: MOST_HARMONICS }, (_, i) => bandOf((i + 1) * hz)),
    }));
    if (known !== null) this.recall(known);
    this.refresh();
  }

  follow(hz: number): void {
    const { followed } = this;
    followed.hz = hz;
    followed.count = countOf(hz);
    for (let i = 0; i < followed.count; i += 1) {
      followed.levels[i] = this.usualOf(i, bandOf((i + 1) * hz));
      followed.powers[i] = 10 ** ((followed.levels[i] ?? 0) / 10);
      followed.weights[i] = 1 / (2 * STRAY.unknown * STRAY.unknown);
    }
  }

  learn(partials: readonly HeardPartial[]): void {
    const { own, common, colour } = this;
    for (const { reed, harmonic, level, off } of partials) {
      const mine = elementAt(own, reed);
      const windows = Math.min(MOST_WINDOWS, (mine.windows[harmonic] ?? 0) + 1);
      mine.windows[harmonic] = windows;
      mine.mean[harmonic] = (mine.mean[harmonic] ?? 0) + (level - (mine.mean[harmonic] ?? 0)) / windows;
      common[harmonic] = (common[harmonic] ?? 0) + COMMON.harmonic * off;
      const band = mine.bands[harmonic] ?? 0;
      colour[band] = (colour[band] ?? 0) + COMMON.colour * off;
    }
    this.refresh();
  }

  known(): KnownReeds {
    return {
      common: tenths(this.common),
      colour: tenths(this.colour),
      reeds: this.naturals.flatMap(({ sound, count }, r) => {
        const { mean, windows } = elementAt(this.own, r);
        return sound === null || windows.every((each) => each === 0)
          ? []
          : [{ id: soundId(sound), levels: tenths(mean, count), windows: [...windows.subarray(0, count)] }];
      }),
    };
  }

  private unheard(reed: number, sound: Sound | null, hz: number): ReedProfile {
    const own = (all: Float64Array) => all.subarray(reed * MOST_HARMONICS, (reed + 1) * MOST_HARMONICS);
    const { levels, powers, weights } = this;
    return { sound, hz, count: countOf(hz), levels: own(levels), powers: own(powers), weights: own(weights) };
  }

  /** Takes up what was kept; what belongs to no reed, or is too long, is passed over. */
  private recall({ common, colour, reeds }: KnownReeds): void {
    this.common.set(common.slice(0, this.common.length));
    this.colour.set(colour.slice(0, this.colour.length));
    for (const { id, levels, windows } of reeds) {
      const own = this.own[this.naturals.findIndex(({ sound }) => sound !== null && soundId(sound) === id)];
      own?.mean.set(levels.slice(0, MOST_HARMONICS));
      own?.windows.set(windows.slice(0, MOST_HARMONICS).map((each) => Math.min(MOST_WINDOWS, each)));
    }
  }

  private usualOf(harmonic: number, band: number): number {
    return -FALL * Math.log2(harmonic + 1) + (this.common[harmonic] ?? 0) + (this.colour[band] ?? 0);
  }

  private refresh(): void {
    this.naturals.forEach(({ levels, powers, weights, count }, r) => {
      const { mean, windows, bands } = elementAt(this.own, r);
      for (let i = 0; i < count; i += 1) {
        const usual = this.usualOf(i, bands[i] ?? 0);
        const known = (windows[i] ?? 0) / ((windows[i] ?? 0) + HALF_KNOWN);
        const level = usual + known * ((mean[i] ?? 0) - usual);
        const stray = STRAY.unknown + known * (STRAY.known - STRAY.unknown);
        levels[i] = level;
        powers[i] = 10 ** (level / 10);
        weights[i] = 1 / (2 * stray * stray);
      }
    });
  }
}
