/** What becomes of rendered pieces: added up, put into the room, limited. */
import { createStereoConvolver, type Sides } from '../../core/signal/stereo-convolver';
import { createLimiter } from '../mixer/limiter';
import type { RoomImpulse } from '../mixer/room';
import { createPieceJoin } from './join-pieces';

export interface FinisherOptions {
  readonly sampleRate: number;
  readonly room: RoomImpulse;
  /** Gain of what comes back from the room. */
  readonly roomGain: number;
  /** Highest level between samples, in dB re full scale. */
  readonly ceiling: number;
}

/** A rendered piece with its tail, which goes on over the next `frames` after its beginning. */
export interface RenderedPiece {
  readonly left: Float32Array;
  readonly right: Float32Array;
  /** What is sent to the room. */
  readonly send: Float32Array;
  /** From the beginning of this piece to that of the next. */
  readonly frames: number;
}

/** Finishes the pieces of one file in their order. */
export interface Finisher {
  add(piece: RenderedPiece): Sides;
  /** The tails of the last piece, until nothing sounds any more. */
  rest(): Sides;
}

const NO_SAMPLES = new Float32Array(0);

/** The samples with so many frames of silence after them. */
const padded = (samples: Float32Array, silence: number): Float32Array => {
  const out = new Float32Array(samples.length + silence);
  out.set(samples);
  return out;
};

const times = (samples: Float32Array, gain: number): Float32Array => samples.map((sample) => sample * gain);

/** Starts a file. */
export const createFinisher = ({ sampleRate, room, roomGain, ceiling }: FinisherOptions): Finisher => {
  const join = createPieceJoin();
  const convolver = createStereoConvolver([times(room.left, roomGain), times(room.right, roomGain)]);
  const limiter = createLimiter({ sampleRate, ceiling });
  let skip = limiter.delay;
  const finished = (sides: Sides, sent: Float32Array): Sides => {
    convolver.addTo(sides, sent);
    const [left, right] = sides;
    limiter.process(left, right);
    const from = Math.min(skip, left.length);
    skip -= from;
    return [left.subarray(from), right.subarray(from)];
  };
  return {
    add: ({ left, right, send, frames }) => {
      const [one = NO_SAMPLES, other = NO_SAMPLES, sent = NO_SAMPLES] = join.add([left, right, send], frames);
      return finished([one, other], sent);
    },
    rest: () => {
      const silence = room.left.length + limiter.delay;
      const [one = NO_SAMPLES, other = NO_SAMPLES, sent = NO_SAMPLES] = join
        .rest()
        .map((tail) => padded(tail, silence));
      return finished([one, other], sent);
    },
  };
};
