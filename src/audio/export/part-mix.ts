/** One part's way to the band's sum in samples, as `mixer/channel.ts` makes it of nodes. */
import type { PartId } from '../../core/score/score';
import type { Mix } from '../../core/settings/mix';
import { type Biquad, type FilterMemory, runFilter } from '../../core/signal/biquad';
import { CHANNEL_STRIPS, placeOf, type Rounding, roundedOff } from '../mixer/channel-strips';
import { partGains } from '../mixer/mix-gains';
import { panGains, sideGains } from '../mixer/pan-law';
import { bell } from '../synthesis/biquad';
import type { VoiceId } from '../synthesis/voice';
import { createTurningSpeaker, type TurningSpeaker } from './turning-speaker';

const fromDecibels = (decibels: number): number => 10 ** (decibels / 20);

/** What the parts add up to: both sides, and what is sent to the room. */
export interface MixSums {
  readonly left: Float32Array;
  readonly right: Float32Array;
  readonly send: Float32Array;
}

type Sides = readonly [left: Float32Array, right: Float32Array];

/** What all parts of a file are mixed with. */
export interface PartMixOptions {
  readonly part: PartId;
  readonly mix: Mix;
  readonly sampleRate: number;
  /** Samples mixed at a time. */
  readonly block: number;
}

const roundOff = (samples: Float32Array, level: number, rounding: Rounding): void => {
  for (let i = 0; i < samples.length; i += 1) {
    const amplitude = level * (samples[i] ?? 0);
    const rounds = amplitude > rounding.from || amplitude < -rounding.from;
    samples[i] = rounds ? roundedOff(amplitude, rounding) : amplitude;
  }
};

/** Adds samples to both sides at once, each times a gain. */
const addToBoth = ([left, right]: Sides, samples: Float32Array, toLeft: number, toRight: number): void => {
  for (let i = 0; i < samples.length; i += 1) {
    const sample = samples[i] ?? 0;
    left[i] = (left[i] ?? 0) + toLeft * sample;
    right[i] = (right[i] ?? 0) + toRight * sample;
  }
};

/** Adds samples that go to one sum alone. */
const addScaled = (out: Float32Array, samples: Float32Array, gain: number): void => {
  for (let i = 0; i < out.length; i += 1) out[i] = (out[i] ?? 0) + gain * (samples[i] ?? 0);
};

interface Place {
  readonly samples: Float32Array;
  readonly where: number | TurningSpeaker;
  /** Whether any note of this block stands there. */
  isUsed: boolean;
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
  private readonly states: readonly [FilterMemory, FilterMemory] = [
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
    const place = this.places.get(where) ?? {
      samples: new Float32Array(block),
      where: where === 'turning' ? createTurningSpeaker(sampleRate) : where,
      isUsed: false,
    };
    place.isUsed = true;
    this.places.set(where, place);
    return place.samples;
  }

  /** Adds the block to the sums from a sample on, `count` samples that begin at a frame of the file. */
  addTo({ left, right, send }: MixSums, at: number, count: number, frame: number): void {
    if (this.blocksLeft === 0) return;
    this.blocksLeft -= 1;
    const sides = this.gathered(count, frame);
    this.shape(sides);
    const to = at + count;
    const sums = { left: left.subarray(at, to), right: right.subarray(at, to), send: send.subarray(at, to) };
    this.addSides(sums, sides);
    for (const place of this.places.values()) {
      if (place.isUsed) place.samples.fill(0);
      place.isUsed = false;
    }
  }

  /** Both sides of what the notes are; one and the same where all of them stand in the middle. */
  private gathered(count: number, frame: number): Sides {
    const [only] = this.places.size === 1 ? this.places.values() : [];
    if (only?.where === 0) {
      // What rings on in the filter is written there too, and has to be cleared.
      only.isUsed = true;
      const middle = only.samples.subarray(0, count);
      return [middle, middle];
    }
    const left = this.left.subarray(0, count);
    const right = this.right.subarray(0, count);
    for (const side of [left, right]) side.fill(0);
    for (const { samples, where, isUsed } of this.places.values()) {
      const heard = samples.subarray(0, count);
      if (typeof where === 'number') {
        // In the middle it is as loud on both sides as it is.
        const [toLeft, toRight] = where === 0 ? [1, 1] : panGains(where);
        if (isUsed) addToBoth([left, right], heard, toLeft, toRight);
      } else where.addTo(left, right, heard, frame);
    }
    return [left, right];
  }

  private shape([left, right]: Sides): void {
    const { level, rounding } = CHANNEL_STRIPS[this.options.part];
    const [one, other] = this.states;
    for (const side of new Set([left, right])) {
      if (rounding !== null) roundOff(side, fromDecibels(level), rounding);
      if (this.filter !== null) runFilter(side, this.filter, side === left ? one : other);
    }
    // The sides go on alike when they part.
    if (left === right) Object.assign(other, one);
  }

  private addSides({ left, right, send }: MixSums, [one, other]: Sides): void {
    const { part, mix } = this.options;
    const strip = CHANNEL_STRIPS[part];
    const fader = partGains(mix)[part] * (strip.rounding === null ? fromDecibels(strip.level) : 1);
    const toRoom = strip.send === null ? 0 : fromDecibels(strip.send) / 2;
    const { leftToLeft, rightToLeft, leftToRight, rightToRight } = sideGains(mix.channels[part].pan);
    const sendOf = (toLeft: number, toRight: number): number => toRoom * (toLeft + toRight);
    if (one === other) {
      const [toLeft, toRight] = [fader * (leftToLeft + rightToLeft), fader * (leftToRight + rightToRight)];
      addToBoth([left, right], one, toLeft, toRight);
      if (toRoom !== 0) addScaled(send, one, sendOf(toLeft, toRight));
      return;
    }
    if (rightToLeft === 0 && leftToRight === 0) {
      addScaled(left, one, fader * leftToLeft);
      addScaled(right, other, fader * rightToRight);
    } else {
      addToBoth([left, right], one, fader * leftToLeft, fader * leftToRight);
      addToBoth([left, right], other, fader * rightToLeft, fader * rightToRight);
    }
    if (toRoom === 0) return;
    addScaled(send, one, fader * sendOf(leftToLeft, leftToRight));
    addScaled(send, other, fader * sendOf(rightToLeft, rightToRight));
  }
}
