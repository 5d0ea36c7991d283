/** One part's way to the band's sum in samples, as `mixer/channel.ts` makes it of nodes. */
import type { PartId } from '../../core/score/score';
import type { Mix } from '../../core/settings/mix';
import { CHANNEL_STRIPS, placeOf, type Rounding, roundedOff } from '../mixer/channel-strips';
import { partGains } from '../mixer/mix-gains';
import { panGains, sideGains } from '../mixer/pan-law';
import { type Biquad, bell } from '../synthesis/biquad';
import type { VoiceId } from '../synthesis/voice';
import { createTurningSpeaker, type TurningSpeaker } from './turning-speaker';

const fromDecibels = (decibels: number): number => 10 ** (decibels / 20);

/** What the parts add up to: both sides, and what is sent to the room. */
export interface MixSums {
  readonly left: Float32Array;
  readonly right: Float32Array;
  readonly send: Float32Array;
}

/** What all parts of a file are mixed with. */
export interface PartMixOptions {
  readonly part: PartId;
  readonly mix: Mix;
  readonly sampleRate: number;
  /** Samples mixed at a time. */
  readonly block: number;
}

/** A filter that goes on from block to block. */
interface Running {
  one: number;
  other: number;
}

const runFilter = (samples: Float32Array, { b0, b1, b2, a1, a2 }: Biquad, state: Running): void => {
  let { one, other } = state;
  for (let i = 0; i < samples.length; i += 1) {
    const x = samples[i] ?? 0;
    const y = b0 * x + one;
    one = b1 * x - a1 * y + other;
    other = b2 * x - a2 * y;
    samples[i] = y;
  }
  state.one = one;
  state.other = other;
};

const roundOff = (samples: Float32Array, level: number, rounding: Rounding): void => {
  for (let i = 0; i < samples.length; i += 1) samples[i] = roundedOff(level * (samples[i] ?? 0), rounding);
};

interface Place {
  readonly samples: Float32Array;
  readonly where: number | TurningSpeaker;
}

/** Blocks that are mixed on after the last note of a part, for what its filter and speaker still hold. */
const BLOCKS_AFTER = 2;

/** Takes the notes of one part at their places and adds them to the sums, block by block. */
export class PartMix {
  private readonly options: PartMixOptions;
  private readonly places = new Map<number | 'turning', Place>();
  private readonly left: Float32Array;
  private readonly right: Float32Array;
  private readonly filter: Biquad | null;
  private readonly states: readonly [Running, Running] = [
    { one: 0, other: 0 },
    { one: 0, other: 0 },
  ];
  private blocksLeft = 0;

  constructor(options: PartMixOptions) {
    const { part, sampleRate, block } = options;
    const { equaliser } = CHANNEL_STRIPS[part];
    this.options = options;
    this.left = new Float32Array(block);
    this.right = new Float32Array(block);
    this.filter = equaliser && bell(equaliser.frequency, equaliser.gain, equaliser.q, sampleRate);
  }

  /** Where a note is added to; good until the block is mixed. */
  place(voice: VoiceId, pitch: number): Float32Array {
    const { part, sampleRate, block } = this.options;
    const where = placeOf(part, voice, pitch);
    this.blocksLeft = BLOCKS_AFTER;
    const known = this.places.get(where);
    if (known !== undefined) return known.samples;
    const made = {
      samples: new Float32Array(block),
      where: where === 'turning' ? createTurningSpeaker(sampleRate) : where,
    };
    this.places.set(where, made);
    return made.samples;
  }

  /** Adds the block to the sums from a sample on, `count` samples that begin at a frame of the file. */
  addTo(sums: MixSums, at: number, count: number, frame: number): void {
    if (this.blocksLeft === 0) return;
    this.blocksLeft -= 1;
    const left = this.left.subarray(0, count).fill(0);
    const right = this.right.subarray(0, count).fill(0);
    for (const { samples, where } of this.places.values()) {
      const heard = samples.subarray(0, count);
      if (typeof where === 'number') addAt(left, right, heard, where);
      else where.addTo(left, right, heard, frame);
      heard.fill(0);
    }
    this.shape([left, right]);
    this.send(sums, at, left, right);
  }

  private shape(sides: readonly [Float32Array, Float32Array]): void {
    const { level, rounding } = CHANNEL_STRIPS[this.options.part];
    for (const side of [0, 1] as const) {
      if (rounding !== null) roundOff(sides[side], fromDecibels(level), rounding);
      if (this.filter !== null) runFilter(sides[side], this.filter, this.states[side]);
    }
  }

  private send({ left, right, send }: MixSums, at: number, one: Float32Array, other: Float32Array): void {
    const { part, mix } = this.options;
    const strip = CHANNEL_STRIPS[part];
    const fader = partGains(mix)[part] * (strip.rounding === null ? fromDecibels(strip.level) : 1);
    const toRoom = strip.send === null ? 0 : fromDecibels(strip.send) / 2;
    const { leftToLeft, rightToLeft, leftToRight, rightToRight } = sideGains(mix.channels[part].pan);
    for (let i = 0; i < one.length; i += 1) {
      const a = fader * (one[i] ?? 0);
      const b = fader * (other[i] ?? 0);
      const l = leftToLeft * a + rightToLeft * b;
      const r = leftToRight * a + rightToRight * b;
      left[at + i] = (left[at + i] ?? 0) + l;
      right[at + i] = (right[at + i] ?? 0) + r;
      send[at + i] = (send[at + i] ?? 0) + toRoom * (l + r);
    }
  }
}

/** Adds a mono sound at a place between the sides; in the middle it is as loud on both as it is. */
const addAt = (left: Float32Array, right: Float32Array, samples: Float32Array, pan: number): void => {
  const [toLeft, toRight] = pan === 0 ? [1, 1] : panGains(pan);
  for (let i = 0; i < samples.length; i += 1) {
    const sample = samples[i] ?? 0;
    left[i] = (left[i] ?? 0) + toLeft * sample;
    right[i] = (right[i] ?? 0) + toRight * sample;
  }
};
