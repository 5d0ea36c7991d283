import { createWithoutBand } from '../signal/without-band';
import { asHz, asSeconds, type Hz } from '../theory/units';
import { createPitchEvidence } from './pitch-evidence';
import type { PitchFrame } from './pitch-frame';
import { createPitchGrid } from './pitch-grid';
import { createPitchPath, type PathCosts, type PitchPath } from './pitch-path';
import { createPitchWindow } from './pitch-window';
import { ANY_HARP, type PitchRange } from './reachable';
import { createRecentPower } from './recent-power';

export interface PitchTrackerOptions {
  /** Hz, 16000 or more; made for 44100 and 48000. */
  readonly sampleRate: number;
  /** What can sound, lowest first; absent means any harp. */
  readonly ranges?: readonly PitchRange[];
  /** Whether the band's own sound will be given, to be taken out of what is heard. */
  readonly band?: boolean;
  /** Level in dB re full scale below which nothing counts as the harp: room noise and leak, as calibrated. */
  readonly gate?: number;
  /** Is handed each hop at the working rate, without the band, before its frame; overwritten by the next. */
  readonly onHop?: (hop: Float64Array) => void;
  /** Makes what decides between so many pitches; by what came before alone when absent. */
  readonly path?: (size: number, costs: PathCosts) => PitchPath;
  /** Whether that path knows what comes later, so that no change has to wait until it is confirmed. */
  readonly foreseen?: boolean;
}

/** Samples in, frames out, one a hop; a frame uses nothing that comes later. */
export interface PitchTracker {
  /**
   * Any number of samples; the same samples cut otherwise give the same frames. `sent` is as much of the band as it
   * was sent out, at the same rate and from the same moment on; what is missing of it counts as silence.
   */
  push(samples: Float32Array, sent?: Float32Array): readonly PitchFrame[];
  /** Learns how the band comes back from sound that is heard later, or was heard before; makes no frames. */
  learn(samples: Float32Array, sent: Float32Array): void;
}

/** Samples in a hop at the working rate: 5.3 ms. */
const HOP = 128;
/** Seconds. The shortest holds a little more than a period of the lowest pitch, the longest three. */
const WINDOW = { shortest: 0.006, longest: 0.05 } as const;
const PERIODS = { shortest: 1.2, longest: 3 } as const;
/** Corner of the high-pass re the lowest pitch. */
const CORNER = 0.85;
/**
 * Evidence that no pitch at all has, of the same kind as that of pitches: where there is sound, where it may be no more
 * than what is left of the band, and below the gate.
 */
const NO_PITCH = { sound: 0, residue: 1, silence: 10 } as const;
/** Costs in units of evidence, as tried on generated takes: of gliding by 0, 20, 40 … cents in a hop, and of leaps. */
const COSTS = { moves: [0, 0.15, 0.4, 0.9, 2], leap: 1, start: 1.5, stop: 1 } as const;
/** Hops after which a pitch has settled: 80 ms, in which a room has mostly taken what was before. */
const SETTLED = 15;
/** Rise of power from hop to hop that begins a sound. */
const BEGINNING = 4;
/** Most hops for which the centre stands nearly still while a change waits, and how far it goes in each. Seconds. */
const LONGEST_HOLD = 4;
const HOLDING = 1e-4;
/** Level of silence, dB. */
const SILENT = -120;
/** Quieter than a harp at arm's length from any microphone (common practice, no source). dB. */
const DEFAULT_GATE = -65;

const lowestOf = (ranges: readonly PitchRange[]): Hz => asHz(Math.min(...ranges.map(({ from }) => from)));
const decibels = (power: number): number => Math.max(SILENT, 10 * Math.log10(power + 1e-12));

/** When the pitch of a frame was: it stands nearly still while a change waits, and never falls. */
const createCentre = () => {
  let last = 0;
  let held = 0;
  return (known: number, ago: number, wavering: boolean): number => {
    held = wavering && held < LONGEST_HOLD ? held + 1 : 0;
    last = Math.min(known, Math.max(last, held > 0 ? last + HOLDING : known - ago));
    return last;
  };
};

/** True while the latest window speaks for another verdict than the path's, or a sound has just begun. */
const isWavering = (values: Float64Array, now: number, rise: number): boolean => {
  let top = 0;
  for (let i = 1; i < values.length; i += 1) if ((values[i] ?? 0) > (values[top] ?? 0)) top = i;
  if (now < 0) return (values[top] ?? 0) > NO_PITCH.sound || rise > BEGINNING;
  return Math.abs(top - now) >= COSTS.moves.length && (values[top] ?? 0) > (values[now] ?? 0) + COSTS.leap;
};

/** Windows in hops of the working rate. */
const windowOf = (lowest: Hz, rate: number) => {
  const hops = (seconds: number): number => Math.max(1, Math.round((seconds * rate) / HOP));
  return {
    shortest: hops(Math.max(WINDOW.shortest, PERIODS.shortest / lowest)),
    longest: hops(Math.max(WINDOW.longest, PERIODS.longest / lowest)),
  };
};

/** The verdict on each hop: a pitch with its clarity, or none, the level, and how long ago that was. */
const createVerdict = (
  rate: number,
  { ranges = ANY_HARP, path: createPath = createPitchPath, foreseen = false }: PitchTrackerOptions,
) => {
  const window = windowOf(lowestOf(ranges), rate);
  const grid = createPitchGrid(ranges);
  const evidence = createPitchEvidence({ grid, rate, hop: HOP, longest: window.longest });
  const path = createPath(grid.frequencies.length, COSTS);
  const periods = createPitchWindow(evidence, window);
  const powers = createRecentPower(window.longest, HOP);
  let place = -1;
  let stood = 0;
  return (hop: Float64Array, silenceAt: (level: number) => number) => {
    powers.push(hop);
    evidence.add(hop, stood >= SETTLED);
    const level = decibels(powers.mean(window.shortest));
    const silence = silenceAt(level);
    const before = place;
    place = path.step(evidence.values, silence);
    const same = place >= 0 && before >= 0 && Math.abs(place - before) < COSTS.moves.length;
    stood = same ? stood + 1 : 0;
    const wavering =
      !foreseen && silence < NO_PITCH.silence && isWavering(evidence.values, place, powers.rise());
    if (place < 0)
      return { level, wavering, frequency: 0, clarity: 0, ago: (window.shortest * HOP) / 2 + HOP };
    const { lag } = periods.periodAt(place, same);
    const ago = powers.centroid(periods.length()) + lag / 2;
    return { level, wavering, frequency: rate / lag, clarity: evidence.likenessAt(place), ago };
  };
};

/** A pitch tracker for one stream. Throws RangeError when no range is given or the rate is too low. */
export const createPitchTracker = (options: PitchTrackerOptions): PitchTracker => {
  const { sampleRate, ranges = ANY_HARP, gate = DEFAULT_GATE, band = false, onHop } = options;
  const lowest = lowestOf(ranges);
  if (!(lowest > 0 && sampleRate >= 16000))
    throw new RangeError('A tracker needs a range and 16 kHz or more');
  const input = createWithoutBand(band, { sampleRate, hop: HOP, lowest: CORNER * lowest });
  const judge = createVerdict(input.rate, options);
  const centreOf = createCentre();
  let hopCount = 0;

  const silenceAt = (level: number): number => {
    const { surely, perhaps } = input.hidden();
    if (level < Math.max(gate, decibels(surely))) return NO_PITCH.silence;
    return level < decibels(perhaps) ? NO_PITCH.residue : NO_PITCH.sound;
  };

  const step = (hop: Float64Array): PitchFrame => {
    hopCount += 1;
    onHop?.(hop);
    const { level, wavering, frequency, clarity, ago } = judge(hop, silenceAt);
    const known = (hopCount * input.rawHop) / sampleRate;
    return {
      known: asSeconds(known),
      centre: asSeconds(centreOf(known, ago / input.rate, wavering)),
      frequency,
      clarity: Math.max(0, Math.min(1, clarity)),
      level,
    };
  };

  return {
    push(samples, sent) {
      const frames: PitchFrame[] = [];
      input.push(samples, sent, (hop) => frames.push(step(hop)));
      return frames;
    },
    learn: (samples, sent) => input.push(samples, sent, () => undefined),
  };
};
