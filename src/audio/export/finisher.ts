/** What becomes of the notes of a file: mixed, put into the room, limited. */

import type { Mix } from '../../core/settings/mix';
import { createLimiter } from '../mixer/limiter';
import { masterGain } from '../mixer/mix-gains';
import type { RoomImpulse } from '../mixer/room';
import { createFileMixer } from './file-mixer';
import { createFileRoom } from './file-room';
import type { MixNote, MixSound } from './note-samples';
import type { MixSums } from './side-sums';

export interface FinisherOptions {
  readonly sampleRate: number;
  /** At half the rate, as `liveRoomAnswer` has it. */
  readonly room: RoomImpulse;
  readonly mix: Mix;
  /** The programme level, in dB. */
  readonly trim: number;
  /** Highest level between samples, in dB re full scale. */
  readonly ceiling: number;
}

/** Finished samples; handed over, not copied. */
export interface Finished {
  readonly left: Float32Array;
  readonly right: Float32Array;
}

/** Finishes one file from its beginning to its end. */
export interface Finisher {
  know(id: number, sound: MixSound): void;
  forget(id: number): void;
  /** The next frames, an even number of them, in which these notes begin. */
  next(notes: readonly MixNote[], frames: number): Finished;
  /** What still rings after them, until nothing sounds any more. */
  rest(): Finished;
}

/** Rounds up to an even number, as the room takes frames two by two. */
const inPairs = (frames: number): number => 2 * Math.ceil(frames / 2);

/** Starts a file. */
export const createFinisher = ({ sampleRate, room, mix, trim, ceiling }: FinisherOptions): Finisher => {
  const gain = 10 ** (trim / 20) * masterGain(mix);
  const mixer = createFileMixer({ sampleRate, mix, gain });
  const heard = createFileRoom(room);
  const limiter = createLimiter({ sampleRate, ceiling });
  let skip = limiter.delay;
  const finished = ({ left, right, send }: MixSums): Finished => {
    heard.addTo([left, right], send);
    limiter.process(left, right);
    const from = Math.min(skip, left.length);
    skip -= from;
    return { left: left.subarray(from), right: right.subarray(from) };
  };
  return {
    know: (id, sound) => mixer.know(id, sound),
    forget: (id) => mixer.forget(id),
    next: (notes, frames) => {
      mixer.add(notes);
      return finished(mixer.mix(frames));
    },
    rest: () => finished(mixer.mix(inPairs(mixer.framesLeft() + heard.rings + limiter.delay))),
  };
};
