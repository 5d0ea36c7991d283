/**
 * The room on the audio thread. It is answered at half the sample rate, where it costs half: a furnished room has next to
 * nothing above what is left there, and a file has the very same room.
 */
import { createDoubler, createHalver, heardThroughHalfRate } from '../../core/signal/half-rate';
import { createPromptConvolver } from '../../core/signal/prompt-convolver';
import { type RoomImpulse, type RoomShape, roomImpulse } from './room';

/** What a room answers an impulse. */
export interface LiveRoomAnswer {
  /** At half the sample rate, without what the way down and up would fold over or delay. */
  readonly atHalfRate: RoomImpulse;
  /** At the whole rate, as it is heard. */
  readonly heard: RoomImpulse;
}

/** Answers a mono signal with the room, block by block. */
export interface LiveRoom {
  /** Writes the room's answer to the next block, as long as it, to both sides. */
  process(samples: Float32Array, left: Float32Array, right: Float32Array): void;
}

/** Above this share of half the rate nothing is left of the room, so that nothing is folded over: 8.2 kHz of 48. */
const TOP = 0.34;
/** Taps of the filter that sees to it, and how far below the top it begins to: 100 dB by a Blackman-Harris window. */
const TAPS = 129;
const FALL = 4.2 / TAPS;

/** A low-pass by a windowed sinc (four-term Blackman-Harris, 1978), centred; unity at 0 Hz. */
const lowPass = (): Float64Array => {
  const raw = Float64Array.from({ length: TAPS }, (_, k) => {
    const x = 2 * (TOP - FALL / 2) * (k - (TAPS - 1) / 2);
    const turn = (2 * Math.PI * (k + 1)) / (TAPS + 1);
    const window =
      0.35875 - 0.48829 * Math.cos(turn) + 0.14128 * Math.cos(2 * turn) - 0.01168 * Math.cos(3 * turn);
    return (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x)) * window;
  });
  const sum = raw.reduce((total, value) => total + value, 0);
  return raw.map((value) => value / sum);
};

/** A side without what lies above. */
const withoutHighs = (side: Float32Array, taps: Float64Array): Float32Array => {
  const out = new Float32Array(side.length);
  const middle = (TAPS - 1) / 2;
  for (let i = 0; i < out.length; i += 1) {
    const first = i - middle;
    let sum = 0;
    for (let k = Math.max(0, -first); k < TAPS && first + k < side.length; k += 1)
      sum += (taps[k] ?? 0) * (side[first + k] ?? 0);
    out[i] = sum;
  }
  return out;
};

/**
 * The answer of a room for `createLiveRoom`, and as it is heard through it, of energy 1 on each side.
 * @param sampleRate the whole rate, in Hz
 */
export const liveRoomAnswer = (room: RoomShape): LiveRoomAnswer => {
  const { left, right } = roomImpulse({ ...room, sampleRate: room.sampleRate / 2 });
  const taps = lowPass();
  const [one, other] = [answerOf(withoutHighs(left, taps)), answerOf(withoutHighs(right, taps))];
  return {
    atHalfRate: { left: one.half, right: other.half },
    heard: { left: one.heard, right: other.heard },
  };
};

/** A side at half the rate such that it is heard with energy 1. */
const answerOf = (side: Float32Array): { readonly half: Float32Array; readonly heard: Float32Array } => {
  const heard = heardThroughHalfRate(side);
  const energy = heard.reduce((sum, value) => sum + value * value, 0);
  const gain = energy > 0 ? 1 / Math.sqrt(energy) : 0;
  return { half: side.map((value) => gain * value), heard: heard.map((value) => gain * value) };
};

/**
 * Opens a room. Throws RangeError for a block it cannot answer at once (`createPromptConvolver`).
 * @param answer at half the rate
 * @param block samples of each stretch at the whole rate
 */
export const createLiveRoom = (answer: RoomImpulse, block: number): LiveRoom => {
  const half = block / 2;
  const convolver = createPromptConvolver([answer.left, answer.right], half);
  const down = createHalver(block);
  const [upLeft, upRight] = [createDoubler(half), createDoubler(half)];
  const [sent, one, other] = [new Float32Array(half), new Float32Array(half), new Float32Array(half)];
  /** After so many samples of silence all that is remembered is silence. */
  const whole = 2 * (answer.left.length + 2 * convolver.longest);
  let quietFor = whole;
  return {
    process: (samples, left, right) => {
      quietFor = isSilent(samples) ? quietFor + block : 0;
      if (quietFor > whole) {
        left.fill(0);
        right.fill(0);
        return;
      }
      down.process(samples, sent);
      convolver.process(sent, one, other);
      upLeft.process(one, left);
      upRight.process(other, right);
    },
  };
};

const isSilent = (samples: Float32Array): boolean => {
  for (let i = 0; i < samples.length; i += 1) if (samples[i] !== 0) return false;
  return true;
};
