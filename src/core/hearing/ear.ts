import type { HeardNote } from './heard-note';
import { createNoteListener, type NoteListenerOptions } from './note-listener';
import type { PitchFrame } from './pitch-frame';
import { createPitchTracker } from './pitch-tracker';
import { reachableRanges } from './reachable';

/** What is known after more samples. */
export interface Heard {
  readonly frames: readonly PitchFrame[];
  /** A note is reported when it has surely begun (`to` null), and again, with the same `id`, when it has ended. */
  readonly notes: readonly HeardNote[];
}

/** Samples in; frames and notes out. Nothing uses what comes later. */
export interface Ear {
  /** Any number of samples; the same samples cut otherwise give the same. */
  push(samples: Float32Array): Heard;
  /** Ends what still sounds. */
  end(): readonly HeardNote[];
}

export interface EarOptions extends NoteListenerOptions {
  /** Level in dB re full scale below which nothing counts as the harp. */
  readonly gate?: number;
}

/** Raw samples handled at a time: fewer than make a frame, so that notes and frames keep step. */
const BLOCK = 64;

/** An ear for one stream. Throws RangeError on a reference outside 440–446 Hz or a rate below 16 kHz. */
export const createEar = (options: EarOptions): Ear => {
  const { sampleRate, harp, reference, gate } = options;
  const ranges = reachableRanges(harp, reference);
  const tracker = createPitchTracker({ sampleRate, ranges, ...(gate === undefined ? {} : { gate }) });
  const listener = createNoteListener(options);
  let taken = 0;

  return {
    push(samples) {
      const frames: PitchFrame[] = [];
      const notes: HeardNote[] = [];
      for (let from = 0; from < samples.length; ) {
        const to = Math.min(samples.length, from + BLOCK - (taken % BLOCK));
        const block = samples.subarray(from, to);
        const made = tracker.push(block);
        notes.push(...listener.push(block, made));
        frames.push(...made);
        taken += to - from;
        from = to;
      }
      return { frames, notes };
    },
    end: () => listener.end(),
  };
};
