import { roomImpulse } from './room';

/** One room for live sound and saved files alike: a small one that does not blur a fast shuffle. */
const ROOM = { seed: 1, seconds: 0.42 };

/** The room's impulse answer as a buffer of a context. */
export const roomBuffer = (context: BaseAudioContext): AudioBuffer => {
  const { left, right } = roomImpulse({ sampleRate: context.sampleRate, ...ROOM });
  const buffer = context.createBuffer(2, left.length, context.sampleRate);
  buffer.getChannelData(0).set(left);
  buffer.getChannelData(1).set(right);
  return buffer;
};
