import { createWithoutBand } from '../signal/without-band';
import { asHz, asSeconds, type Hz } from '../theory/units';
import { createPitchEvidence, type PitchEvidence } from './pitch-evidence';
import type { PitchFrame } from './pitch-frame';
import { createPitchGrid } from './pitch-grid';
import { createPitchPath, type PathCosts, type PitchPath } from './pitch-path';
import { createPitchWindow } from './pitch-window';
import { ANY_HARP, type PitchRange } from './reachable';
import { createRecentPower, type RecentPower } from './recent-power';

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
  /** Is handed each frame with the pitch as a longer window has it: later, and steadier. */
  readonly onReading?: (reading: PitchFrame) => void;
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
  /** Seconds that the band takes to come back; null where that is not known. */
  delay(): number | null;
}

/** Samples in a hop at the working rate: 5.3 ms. */
export const HOP = 128;
/**
 * Seconds. The shortest holds a little more than a period of the lowest pitch, the longest three. A frame's window is
 * short, as half of it is how late the frame tells of a pitch; notes are better read from a longer one.
 */
const WINDOW = { shortest: 0.006, frame: 0.022, reading: 0.05 } as const;
const PERIODS = { shortest: 1.2, longest: 3 } as const;
/** Corner of the high-pass re the lowest pitch. */
const CORNER = 0.85;
/**
 * Evidence that no pitch at all has, of the same kind as that of pitches: where there is sound, where it may be no more
 * than what is left of the band, and below the gate.
 */
const NO_PITCH = { sound: 0.2, residue: 1.2, silence: 10 } as const;
/** Costs in units of evidence, as tried on generated takes: of gliding by 0, 20, 40 … cents in a hop, and of leaps. */
const COSTS = { moves: [0, 0.15, 0.4, 0.9, 2], leap: 1, start: 0.9, stop: 1 } as const;
/** Hops after which a pitch has settled: 80 ms, in which a room has mostly taken what was before. */
const SETTLED = 15;
/** Hops after which a note before is no longer heard in a room as more than noise is: 0.1 s. */
const LATE = 20;
/** Rise of power from hop to hop that begins a sound. */
const BEGINNING = 4;
/** Most hops for which the centre stands nearly still while a change waits, and how far it goes in each. Seconds. */
const LONGEST_HOLD = 4;
const HOLDING = 1e-4;
/** Level of silence, dB. */
const SILENT = -120;
/** Quieter than a harp at arm's length from any microphone (common practice, no source). dB. */
export const DEFAULT_GATE = -65;

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
  const hops = (seconds: number, periods: number): number =>
    Math.max(1, Math.round((Math.max(seconds, periods / lowest) * rate) / HOP));
  return {
    shortest: hops(WINDOW.shortest, PERIODS.shortest),
    frame: hops(WINDOW.frame, PERIODS.longest),
    reading: hops(WINDOW.reading, PERIODS.longest),
  };
};

/** What is decided about a hop. */
interface Verdict {
  /** Place of its pitch in the grid, −1 where there is none. */
  readonly place: number;
  /** Whether that goes on from the hop before. */
  readonly same: boolean;
  readonly wavering: boolean;
  readonly level: number;
}

/** Decides which pitch each hop has. */
const createVerdict = (
  { values, add }: PitchEvidence,
  powers: RecentPower,
  { path, shortest, foreseen }: { path: PitchPath; shortest: number; foreseen: boolean },
) => {
  let place = -1;
  let stood = 0;
  let unvoiced = LATE;
  return (hop: Float64Array, silenceAt: (level: number) => number): Verdict => {
    powers.push(hop);
    const level = decibels(powers.mean(shortest));
    const silence = silenceAt(level);
    add(hop, { settled: stood >= SETTLED, note: unvoiced < LATE, silent: silence === NO_PITCH.silence });
    const before = place;
    place = path.step(values, silence);
    const same = place >= 0 && before >= 0 && Math.abs(place - before) < COSTS.moves.length;
    stood = same ? stood + 1 : 0;
    unvoiced = place >= 0 ? 0 : unvoiced + 1;
    const wavering = !foreseen && silence < NO_PITCH.silence && isWavering(values, place, powers.rise());
    return { place, same, wavering, level };
  };
};

/** Makes frames of verdicts, their pitch read in windows of so many hops. */
const createFraming = (
  evidence: PitchEvidence,
  powers: RecentPower,
  { rate, shortest, longest }: { rate: number; shortest: number; longest: number },
) => {
  const periods = createPitchWindow(evidence, { shortest, longest });
  const centreOf = createCentre();
  return ({ place, same, wavering, level }: Verdict, known: number): PitchFrame => {
    const voiced = place >= 0;
    const { lag } = voiced ? periods.periodAt(place, same) : { lag: 0 };
    const ago = voiced ? powers.centroid(periods.length()) + lag / 2 : (shortest * HOP) / 2 + HOP;
    const clarity = voiced ? evidence.likenessAt(place) : 0;
    return {
      known: asSeconds(known),
      centre: asSeconds(centreOf(known, ago / rate, wavering)),
      frequency: voiced ? rate / lag : 0,
      clarity: Math.max(0, Math.min(1, clarity)),
      level,
    };
  };
};

const createJudge = (rate: number, options: PitchTrackerOptions) => {
  const { ranges = ANY_HARP, path = createPitchPath, foreseen = false, onReading } = options;
  const window = windowOf(lowestOf(ranges), rate);
  const grid = createPitchGrid(ranges);
  const evidence = createPitchEvidence({ grid, rate, hop: HOP, longest: window.reading });
  const powers = createRecentPower(window.reading, HOP);
  const { shortest } = window;
  const places = path(grid.frequencies.length, COSTS);
  const verdictOf = createVerdict(evidence, powers, { path: places, shortest, foreseen });
  const frameOf = createFraming(evidence, powers, { rate, shortest, longest: window.frame });
  const readingOf = createFraming(evidence, powers, { rate, shortest, longest: window.reading });
  return (hop: Float64Array, known: number, silenceAt: (level: number) => number): PitchFrame => {
    const verdict = verdictOf(hop, silenceAt);
    onReading?.(readingOf(verdict, known));
    return frameOf(verdict, known);
  };
};

/** A pitch tracker for one stream. Throws RangeError when no range is given or the rate is too low. */
export const createPitchTracker = (options: PitchTrackerOptions): PitchTracker => {
  const { sampleRate, ranges = ANY_HARP, gate = DEFAULT_GATE, band = false, onHop } = options;
  const lowest = lowestOf(ranges);
  if (!(lowest > 0 && sampleRate >= 16000))
    throw new RangeError('A tracker needs a range and 16 kHz or more');
  const input = createWithoutBand(band, { sampleRate, hop: HOP, lowest: CORNER * lowest });
  const judge = createJudge(input.rate, options);
  let hopCount = 0;

  const silenceAt = (level: number): number => {
    const { surely, perhaps } = input.hidden();
    if (level < Math.max(gate, decibels(surely))) return NO_PITCH.silence;
    return level < decibels(perhaps) ? NO_PITCH.residue : NO_PITCH.sound;
  };

  const step = (hop: Float64Array): PitchFrame => {
    hopCount += 1;
    onHop?.(hop);
    return judge(hop, (hopCount * input.rawHop) / sampleRate, silenceAt);
  };

  return {
    push(samples, sent) {
      const frames: PitchFrame[] = [];
      input.push(samples, sent, (hop) => frames.push(step(hop)));
      return frames;
    },
    learn: (samples, sent) => input.push(samples, sent, () => undefined),
    delay: input.delay,
  };
};
