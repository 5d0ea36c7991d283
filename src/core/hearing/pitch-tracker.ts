import { asSeconds } from '../theory/units';
import { createFrontEnd } from './front-end';
import { createLeakCanceller } from './leak-canceller';
import { createPitchEvidence } from './pitch-evidence';
import type { PitchFrame } from './pitch-frame';
import { createPitchGrid } from './pitch-grid';
import { createPitchPath } from './pitch-path';
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
}

/** Samples in, frames out, one a hop; a frame uses nothing that comes later. */
export interface PitchTracker {
  /**
   * Any number of samples; the same samples cut otherwise give the same frames. `sent` is as much of the band as it
   * was sent out, at the same rate and from the same moment on; what is missing of it counts as silence.
   */
  push(samples: Float32Array, sent?: Float32Array): readonly PitchFrame[];
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
/** Likeness above which the window grows in any case, and how much it may lose by growing otherwise. */
const STEADY = 0.8;
const LOSS = 0.02;
/** Rise of power from hop to hop that begins a sound. */
const BEGINNING = 4;
/** Most hops for which the centre stands nearly still while a change waits, and how far it goes in each. Seconds. */
const LONGEST_HOLD = 4;
const HOLDING = 1e-4;
/** Level of silence, dB. */
const SILENT = -120;
/** Quieter than a harp at arm's length from any microphone (common practice, no source). dB. */
const DEFAULT_GATE = -65;

const EMPTY = new Float32Array(0);
const NOTHING_SENT = new Float64Array(HOP);

const decibels = (power: number): number => Math.max(SILENT, 10 * Math.log10(power + 1e-12));

/** A pitch tracker for one stream. Throws RangeError when no range is given or the rate is too low. */
export const createPitchTracker = ({
  sampleRate,
  ranges = ANY_HARP,
  gate = DEFAULT_GATE,
  band = false,
  onHop,
}: PitchTrackerOptions): PitchTracker => {
  const lowest = Math.min(...ranges.map(({ from }) => from));
  if (!(lowest > 0 && sampleRate >= 16000))
    throw new RangeError('A tracker needs a range and 16 kHz or more');
  const front = createFrontEnd({ sampleRate, hop: HOP, lowest: CORNER * lowest });
  const { rate } = front;
  const sentFront = createFrontEnd({ sampleRate, hop: HOP, lowest: CORNER * lowest });
  const canceller = band ? createLeakCanceller(HOP) : undefined;
  const rest = new Float64Array(HOP);
  const grid = createPitchGrid(ranges);
  const hops = (seconds: number): number => Math.max(1, Math.round((seconds * rate) / HOP));
  const window = {
    shortest: hops(Math.max(WINDOW.shortest, PERIODS.shortest / lowest)),
    longest: hops(Math.max(WINDOW.longest, PERIODS.longest / lowest)),
  };
  const evidence = createPitchEvidence({ grid, rate, hop: HOP, window });
  const path = createPitchPath(grid.frequencies.length, COSTS);
  const powers = new Float64Array(window.longest);

  let hopCount = 0;
  let place = -1;
  let length = window.shortest;
  let lastCentre = 0;
  let held = 0;

  const levelOf = (hop: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < HOP; i += 1) sum += (hop[i] ?? 0) * (hop[i] ?? 0);
    powers.copyWithin(0, 1);
    powers[powers.length - 1] = sum / HOP;
    let all = 0;
    for (let i = 1; i <= window.shortest; i += 1) all += powers[powers.length - i] ?? 0;
    return decibels(all / window.shortest);
  };

  /** Middle of the energy of the last hops, in samples before the end. */
  const centroid = (count: number): number => {
    let sum = 1e-20;
    let moment = sum * count * 0.5;
    for (let i = 0; i < count; i += 1) {
      const p = powers[powers.length - 1 - i] ?? 0;
      sum += p;
      moment += p * (i + 0.5);
    }
    return (moment / sum) * HOP;
  };

  /** True while the latest window speaks for another verdict than the path's, or a sound has just begun. */
  const isWavering = (now: number): boolean => {
    const { values } = evidence;
    let top = 0;
    for (let i = 1; i < values.length; i += 1) if ((values[i] ?? 0) > (values[top] ?? 0)) top = i;
    if (now >= 0) {
      return (
        Math.abs(top - now) >= COSTS.moves.length && (values[top] ?? 0) > (values[now] ?? 0) + COSTS.leap
      );
    }
    const last = powers.length - 1;
    return (values[top] ?? 0) > NO_PITCH.sound || (powers[last] ?? 0) > BEGINNING * (powers[last - 1] ?? 0);
  };

  const frame = (frequency: number, clarity: number, ago: number, level: number): PitchFrame => {
    const known = (hopCount * front.rawHop) / sampleRate;
    const centre = held > 0 ? lastCentre + HOLDING : known - ago / rate;
    lastCentre = Math.min(known, Math.max(lastCentre, centre));
    return {
      known: asSeconds(known),
      centre: asSeconds(lastCentre),
      frequency,
      clarity: Math.max(0, Math.min(1, clarity)),
      level,
    };
  };

  const voiced = (now: number, level: number): PitchFrame => {
    const same = place >= 0 && Math.abs(now - place) < COSTS.moves.length;
    place = now;
    length = same ? Math.min(window.longest, length + 1) : window.shortest;
    const likeness = evidence.likenessAt(now);
    let period = evidence.periodAt(now, length);
    while (length > window.shortest && period.height < Math.min(STEADY, likeness - LOSS)) {
      length = Math.max(window.shortest, length >> 1);
      period = evidence.periodAt(now, length);
    }
    return frame(rate / period.lag, likeness, centroid(length) + period.lag / 2, level);
  };

  const silenceAt = (level: number): number => {
    if (level < gate) return NO_PITCH.silence;
    if (canceller === undefined) return NO_PITCH.sound;
    if (level < decibels(canceller.unlearned())) return NO_PITCH.silence;
    return level < decibels(canceller.residue()) ? NO_PITCH.residue : NO_PITCH.sound;
  };

  const step = (heard: Float64Array, sent: Float64Array | undefined): PitchFrame => {
    hopCount += 1;
    let hop = heard;
    if (canceller !== undefined) {
      canceller.step(sent ?? NOTHING_SENT, heard, rest);
      hop = rest;
    }
    onHop?.(hop);
    const level = levelOf(hop);
    evidence.add(hop);
    const now = path.step(evidence.values, silenceAt(level));
    const wavering = level >= gate && isWavering(now);
    held = wavering && held < LONGEST_HOLD ? held + 1 : 0;
    if (now >= 0) return voiced(now, level);
    place = -1;
    return frame(0, 0, (window.shortest * HOP) / 2 + HOP, level);
  };

  return {
    push(samples, sent = EMPTY) {
      const sentHops: Float64Array[] = [];
      if (canceller !== undefined) {
        const padded = new Float32Array(samples.length);
        padded.set(sent.subarray(0, samples.length));
        sentFront.push(padded, (hop) => sentHops.push(hop.slice()));
      }
      const frames: PitchFrame[] = [];
      front.push(samples, (hop) => frames.push(step(hop, sentHops[frames.length])));
      return frames;
    },
  };
};
