import { roomImpulse } from './room';

/** One room for live sound and saved files alike: a small one that does not blur a fast shuffle. */
const ROOM_SEED = 1;

/** Length of the room's answer, in seconds. */
export const ROOM_SECONDS = 0.42;

/** The room's impulse answer as a buffer of a context. */
export const roomBuffer = (context: BaseAudioContext): AudioBuffer => {
  const { left, right } = roomImpulse({
    sampleRate: context.sampleRate,
    seed: ROOM_SEED,
    seconds: ROOM_SECONDS,
  });
  const buffer = context.createBuffer(2, left.length, context.sampleRate);
  buffer.getChannelData(0).set(left);
  buffer.getChannelData(1).set(right);
  return buffer;
};
