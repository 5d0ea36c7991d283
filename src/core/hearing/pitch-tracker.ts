import { createRecentPower, type RecentPower } from '../signal/recent-power';
import { createWithoutBand, type HopTakers } from '../signal/without-band';
import { asHz, asSeconds, type Hz } from '../theory/units';
import { COSTS, createPitchDecider, decibels, NO_PITCH, type SilenceAt, type Verdict } from './pitch-decider';
import { createPitchEvidence, type PitchEvidence } from './pitch-evidence';
import type { PitchFrame } from './pitch-frame';
import { createPitchGrid } from './pitch-grid';
import { createPitchPath, type PathCosts, type PitchPath } from './pitch-path';
import { createPitchWindow } from './pitch-window';
import { ANY_HARP, type PitchRange } from './reachable';

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

/**
 * Samples in, frames out, one a hop, and one in the middle of a hop where another pitch has surely begun by then; a
 * frame uses nothing that comes later.
 */
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
/** Most hops for which the centre stands nearly still while a change waits, and how far it goes in each. Seconds. */
const LONGEST_HOLD = 4;
const HOLDING = 1e-4;
/** Quieter than a harp at arm's length from any microphone (common practice, no source). dB. */
export const DEFAULT_GATE = -65;

const DEAF: HopTakers = { begin: () => undefined, take: () => undefined };

const lowestOf = (ranges: readonly PitchRange[]): Hz => asHz(Math.min(...ranges.map(({ from }) => from)));

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

/** Makes frames of verdicts, their pitch read in windows of so many hops. */
const createFraming = (
  evidence: PitchEvidence,
  powers: RecentPower,
  { rate, shortest, longest }: { rate: number; shortest: number; longest: number },
) => {
  const periods = createPitchWindow(evidence, { shortest, longest });
  const centreOf = createCentre();
  return ({ place, same, early, wavering, level }: Verdict, known: number): PitchFrame => {
    const voiced = place >= 0;
    const { lag } = voiced ? periods.periodAt(place, same) : { lag: 0 };
    const pitchAgo = early ? HOP + lag : powers.centroid(periods.length()) + lag / 2;
    const ago = voiced ? pitchAgo : (shortest * HOP) / 2 + HOP;
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
  const { begin, decide } = createPitchDecider(evidence, powers, {
    path: places,
    hop: HOP,
    shortest,
    foreseen,
  });
  const frameOf = createFraming(evidence, powers, { rate, shortest, longest: window.frame });
  const readingOf = createFraming(evidence, powers, { rate, shortest, longest: window.reading });
  return {
    /** An early frame speaks for the beginning of what it heard: so little shows no more than that there is a pitch. */
    begin(half: Float64Array, known: number, silenceAt: SilenceAt): PitchFrame | null {
      const verdict = begin(half, silenceAt);
      return verdict && frameOf(verdict, known);
    },
    judge(hop: Float64Array, known: number, silenceAt: SilenceAt): PitchFrame {
      const verdict = decide(hop, silenceAt);
      onReading?.(readingOf(verdict, known));
      return frameOf(verdict, known);
    },
  };
};

/** A pitch tracker for one stream. Throws RangeError when no range is given or the rate is too low. */
export const createPitchTracker = (options: PitchTrackerOptions): PitchTracker => {
  const { sampleRate, ranges = ANY_HARP, gate = DEFAULT_GATE, band = false, onHop } = options;
  const lowest = lowestOf(ranges);
  if (!(lowest > 0 && sampleRate >= 16000))
    throw new RangeError('A tracker needs a range and 16 kHz or more');
  const input = createWithoutBand(band, { sampleRate, hop: HOP, lowest: CORNER * lowest });
  const { begin, judge } = createJudge(input.rate, options);
  let hopCount = 0;
  let frames: PitchFrame[] = [];

  const silenceAt: SilenceAt = (level) => {
    const { surely, perhaps } = input.hidden();
    if (level < Math.max(gate, decibels(surely))) return NO_PITCH.silence;
    return level < decibels(perhaps) ? NO_PITCH.residue : NO_PITCH.sound;
  };

  const knownAt = (hops: number): number => (hops * input.rawHop) / sampleRate;
  const takers: HopTakers = {
    begin(half) {
      const early = begin(half, knownAt(hopCount + 0.5), silenceAt);
      if (early !== null) frames.push(early);
    },
    take(hop) {
      hopCount += 1;
      onHop?.(hop);
      frames.push(judge(hop, knownAt(hopCount), silenceAt));
    },
  };

  return {
    push(samples, sent) {
      frames = [];
      input.push(samples, sent, takers);
      return frames;
    },
    learn: (samples, sent) => input.push(samples, sent, DEAF),
    delay: input.delay,
  };
};
