import { type LiveRoomAnswer, liveRoomAnswer } from './live-room';

/** One room for live sound and saved files alike: a small one that does not blur a fast shuffle, chosen for how wide it leaves the band. */
const ROOM_SEED = 3;

/** Length of the room's answer, in seconds. */
const ROOM_SECONDS = 0.42;

const answers = new Map<number, LiveRoomAnswer>();

/** The room's answer at a rate in Hz. Computed once a rate: it takes some hundredths of a second. */
export const roomAt = (sampleRate: number): LiveRoomAnswer => {
  const known = answers.get(sampleRate);
  if (known !== undefined) return known;
  const made = liveRoomAnswer({ sampleRate, seed: ROOM_SEED, seconds: ROOM_SECONDS });
  answers.set(sampleRate, made);
  return made;
};

/** Computes the room ahead at the rates a context is likely to have. */
export const prepareRoom = (): void => {
  for (const sampleRate of [48_000, 44_100]) roomAt(sampleRate);
};
