/** The room and the limiter on the audio thread, in one processor: each that is called costs more than it computes. */
import { createLimiter, type Limiter } from './limiter';
import { createLiveRoom, type LiveRoom } from './live-room';
import type { RoomImpulse } from './room';

declare const sampleRate: number;
declare abstract class AudioWorkletProcessor {}
declare const registerProcessor: (
  name: string,
  processor: new (options: { readonly processorOptions: RoomImpulse }) => AudioWorkletProcessor,
) => void;

/** Highest level between samples: 0.2 dB under the promised −1 dBTP, for what the estimate may miss. */
const CEILING = -1.2;

/** Takes the band and what it sends to the room. */
class MasterProcessor extends AudioWorkletProcessor {
  static readonly parameterDescriptors = [{ name: 'room', defaultValue: 1, minValue: 0, maxValue: 1 }];

  private readonly limiter: Limiter = createLimiter({ sampleRate, ceiling: CEILING });
  private readonly answer: RoomImpulse;
  private room: LiveRoom | null = null;
  private silence = new Float32Array(0);
  private one = new Float32Array(0);
  private other = new Float32Array(0);

  constructor({ processorOptions }: { readonly processorOptions: RoomImpulse }) {
    super();
    this.answer = processorOptions;
  }

  process(
    [band = [], sent = []]: readonly Float32Array[][],
    [output = []]: readonly Float32Array[][],
    { room: openness }: { readonly room: Float32Array },
  ): boolean {
    const [left, right] = output;
    if (left === undefined || right === undefined) return true;
    const [first, second = first] = band;
    left.fill(0);
    right.fill(0);
    if (first !== undefined) left.set(first);
    if (second !== undefined) right.set(second);
    this.roomOf(left.length).process(sent[0] ?? this.silence, this.one, this.other);
    addScaled(left, this.one, openness);
    addScaled(right, this.other, openness);
    this.limiter.process(left, right);
    return true;
  }

  /** How long a block is, is only known once there is one. */
  private roomOf(block: number): LiveRoom {
    if (this.room !== null && this.silence.length === block) return this.room;
    this.silence = new Float32Array(block);
    this.one = new Float32Array(block);
    this.other = new Float32Array(block);
    this.room = createLiveRoom(this.answer, block);
    return this.room;
  }
}

/** @param gain one for all samples, or one each */
const addScaled = (out: Float32Array, samples: Float32Array, gain: Float32Array): void => {
  const still = gain.length === 1 ? (gain[0] ?? 1) : null;
  for (let i = 0; i < out.length; i += 1) {
    out[i] = (out[i] ?? 0) + (still ?? gain[i] ?? 0) * (samples[i] ?? 0);
  }
};

registerProcessor('master', MasterProcessor);
