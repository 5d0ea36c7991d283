/** The room of a file: at half the rate, as on the audio thread, but answered by long transforms. */
import { createDoubler, createHalver, HALF_RATE_RINGS } from '../../core/signal/half-rate';
import { convolverBlock, createStereoConvolver, type Sides } from '../../core/signal/stereo-convolver';
import type { RoomImpulse } from '../mixer/room';

/** A room that has heard nothing yet. */
export interface FileRoom {
  /** Adds the answer to the next samples to both sides, as long as they. Throws RangeError for an odd number of them. */
  addTo(sides: Sides, samples: Float32Array): void;
  /** Frames for which it rings on. */
  readonly rings: number;
}

/** Frames a room with this answer takes in at a time: stretches of a multiple of these cost least. */
export const fileRoomBlock = ({ left }: RoomImpulse): number => 2 * convolverBlock(left.length);

const add = (side: Float32Array, samples: Float32Array): void => {
  for (let i = 0; i < side.length; i += 1) side[i] = (side[i] ?? 0) + (samples[i] ?? 0);
};

/** Opens a room. @param answer at half the rate, as `liveRoomAnswer` has it */
export const createFileRoom = (answer: RoomImpulse): FileRoom => {
  const block = fileRoomBlock(answer);
  const half = block / 2;
  const convolver = createStereoConvolver([answer.left, answer.right]);
  const halver = createHalver(block);
  const doublers = [createDoubler(half), createDoubler(half)] as const;
  const halved = new Float32Array(half);
  const answered = [new Float32Array(half), new Float32Array(half)] as const;
  const heard = new Float32Array(block);
  const addBlock = (sides: Sides, samples: Float32Array): void => {
    const sent = halved.subarray(0, samples.length / 2);
    halver.process(samples, sent);
    convolver.process(sent, answered);
    for (const side of [0, 1] as const) {
      doublers[side].process(answered[side].subarray(0, sent.length), heard);
      add(sides[side], heard);
    }
  };
  return {
    rings: 2 * answer.left.length + HALF_RATE_RINGS,
    addTo: ([left, right], samples) => {
      if (samples.length % 2 !== 0) throw new RangeError(`frames must be even, got ${samples.length}`);
      for (let at = 0; at < samples.length; at += block) {
        const to = at + block;
        addBlock([left.subarray(at, to), right.subarray(at, to)], samples.subarray(at, to));
      }
    },
  };
};
