/** One part's way to the band's sum in samples, as `mixer/channel.ts` makes it of nodes. */
import type { PartId } from '../../core/score/score';
import type { Mix } from '../../core/settings/mix';
import { type Biquad, type FilterMemory, runFilter, runFilterOnBoth } from '../../core/signal/biquad';
import type { Sides } from '../../core/signal/stereo-convolver';
import { CHANNEL_STRIPS, placeOf } from '../mixer/channel-strips';
import { partGains } from '../mixer/mix-gains';
import { panGains, sideGains } from '../mixer/pan-law';
import { bell } from '../synthesis/biquad';
import type { VoiceId } from '../synthesis/voice';
import { addSides, type MixSums, roundOff, type Spread, spread, type ToSums } from './side-sums';
import { createTurningSpeaker, type TurningSpeaker } from './turning-speaker';

const fromDecibels = (decibels: number): number => 10 ** (decibels / 20);

/** What all parts of a file are mixed with. */
export interface PartMixOptions {
  readonly part: PartId;
  readonly mix: Mix;
  /** Gain of the whole band. */
  readonly gain: number;
  readonly sampleRate: number;
  /** Samples mixed at a time. */
  readonly block: number;
}

interface Place {
  readonly samples: Float32Array;
  readonly where: number | TurningSpeaker;
  /** Whether any note of this block stands there. */
  isUsed: boolean;
}

/** Blocks that are mixed on after the last note of a part, for what its filter and speaker still hold. */
const BLOCKS_AFTER = 2;

/** What each side of a part adds to the sums. */
const sumsOf = ({ part, mix, gain }: PartMixOptions): readonly [ToSums, ToSums] => {
  const strip = CHANNEL_STRIPS[part];
  const fader = gain * partGains(mix)[part] * (strip.rounding === null ? fromDecibels(strip.level) : 1);
  const toRoom = strip.send === null ? 0 : fromDecibels(strip.send) / 2;
  const { leftToLeft, rightToLeft, leftToRight, rightToRight } = sideGains(mix.channels[part].pan);
  const to = (toLeft: number, toRight: number): ToSums => ({
    left: fader * toLeft,
    right: fader * toRight,
    send: fader * toRoom * (toLeft + toRight),
  });
  return [to(leftToLeft, leftToRight), to(rightToLeft, rightToRight)];
};

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
  private readonly toSums: readonly [ToSums, ToSums];
  private blocksLeft = 0;

  constructor(options: PartMixOptions) {
    const { part, sampleRate, block } = options;
    const { equaliser } = CHANNEL_STRIPS[part];
    this.options = options;
    this.left = new Float32Array(block);
    this.right = new Float32Array(block);
    this.filter = equaliser && bell(equaliser.frequency, equaliser.gain, equaliser.q, sampleRate);
    this.toSums = sumsOf(options);
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
    addSides(sums, sides, this.toSums);
    for (const place of this.places.values()) {
      if (place.isUsed) place.samples.fill(0);
      place.isUsed = false;
    }
  }

  /** Both sides of what the notes are; one and the same where all of them stand in the middle. */
  private gathered(count: number, frame: number): Sides {
    const { level, rounding } = CHANNEL_STRIPS[this.options.part];
    const [only] = this.places.size === 1 && rounding === null ? this.places.values() : [];
    if (only?.where === 0) {
      // What rings on in the filter is written there too, and has to be cleared.
      only.isUsed = true;
      const middle = only.samples.subarray(0, count);
      return [middle, middle];
    }
    // What is rounded off is brought to its level before.
    const gain = rounding === null ? 1 : fromDecibels(level);
    const sides: Sides = [this.left.subarray(0, count), this.right.subarray(0, count)];
    const used: Spread[] = [];
    for (const { samples, where, isUsed } of this.places.values()) {
      if (typeof where !== 'number' || !isUsed) continue;
      // In the middle it is as loud on both sides as it is.
      const [toLeft, toRight] = where === 0 ? [1, 1] : panGains(where);
      used.push({ samples, toLeft: gain * toLeft, toRight: gain * toRight });
    }
    spread(sides, used);
    for (const { samples, where } of this.places.values())
      if (typeof where !== 'number') where.addTo(...sides, samples.subarray(0, count), frame);
    return sides;
  }

  private shape(sides: Sides): void {
    const { rounding } = CHANNEL_STRIPS[this.options.part];
    if (rounding !== null) for (const side of sides) roundOff(side, rounding);
    if (this.filter === null) return;
    const [left, right] = sides;
    const [one, other] = this.states;
    if (left !== right) runFilterOnBoth(sides, this.filter, this.states);
    else {
      runFilter(left, this.filter, one);
      // The sides go on alike when they part.
      Object.assign(other, one);
    }
  }
}
