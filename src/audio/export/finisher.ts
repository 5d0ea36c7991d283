/** What becomes of the notes of a file: mixed, put into the room, limited. */

import type { Mix } from '../../core/settings/mix';
import { createStereoConvolver } from '../../core/signal/stereo-convolver';
import { createLimiter } from '../mixer/limiter';
import { masterGain } from '../mixer/mix-gains';
import type { RoomImpulse } from '../mixer/room';
import { createFileMixer } from './file-mixer';
import type { MixNote, MixSound } from './note-samples';
import type { MixSums } from './part-mix';

export interface FinisherOptions {
  readonly sampleRate: number;
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
  /** The next frames, in which these notes begin. */
  next(notes: readonly MixNote[], frames: number): Finished;
  /** What still rings after them, until nothing sounds any more. */
  rest(): Finished;
}

const times = (samples: Float32Array, gain: number): Float32Array => samples.map((sample) => sample * gain);

const scale = (samples: Float32Array, gain: number): void => {
  for (let i = 0; i < samples.length; i += 1) samples[i] = gain * (samples[i] ?? 0);
};

/** Starts a file. */
export const createFinisher = ({ sampleRate, room, mix, trim, ceiling }: FinisherOptions): Finisher => {
  const gain = 10 ** (trim / 20) * masterGain(mix);
  const mixer = createFileMixer({ sampleRate, mix });
  const convolver = createStereoConvolver([times(room.left, gain), times(room.right, gain)]);
  const limiter = createLimiter({ sampleRate, ceiling });
  let skip = limiter.delay;
  const finished = ({ left, right, send }: MixSums): Finished => {
    for (const side of [left, right]) scale(side, gain);
    convolver.addTo([left, right], send);
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
    rest: () => finished(mixer.mix(mixer.framesLeft() + room.left.length + limiter.delay)),
  };
};
