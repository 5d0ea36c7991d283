import { createGripListener } from '../grips/grip-listener';
import type { ReedProfiles } from '../grips/reed-profiles';
import type { Sound } from '../harp/harp';
import { decimation } from '../signal/front-end';
import type { HarpInHand } from './choose-sounds';
import { createGripNotes } from './grip-notes';
import type { HeardNote } from './heard-note';
import { createNoteListener } from './note-listener';
import type { PitchFrame } from './pitch-frame';
import { createPitchTracker, DEFAULT_GATE, HOP, type PitchTrackerOptions } from './pitch-tracker';
import { reachableRanges } from './reachable';

/** What is known after more samples. */
export interface Heard {
  readonly frames: readonly PitchFrame[];
  /**
   * A note is reported when it has surely begun (`to` null), and again, with the same `id`, when it has ended; in
   * between where it proves to be several holes at once.
   */
  readonly notes: readonly HeardNote[];
}

/** Samples in; frames and notes out. Nothing uses what comes later. */
export interface Ear {
  /** Any number of samples; the same samples cut otherwise give the same. `sent` is as the tracker takes it. */
  push(samples: Float32Array, sent?: Float32Array): Heard;
  /** Ends what still sounds. */
  end(): readonly HeardNote[];
  /** As the tracker's. */
  learn(samples: Float32Array, sent: Float32Array): void;
  /** As the tracker's. */
  delay(): number | null;
  /** Learns the reed of a natural sound from a note of it alone, heard in the last three seconds: its beginning and end, s. */
  teach(sound: Sound, from: number, to: number): void;
}

export type EarOptions = HarpInHand &
  Pick<PitchTrackerOptions, 'sampleRate' | 'gate' | 'band' | 'path' | 'foreseen'> & {
    /** What is known of the reeds already; it is learnt on. A harp nobody has heard when absent. */
    readonly profiles?: ReedProfiles;
  };

/**
 * An ear for one stream. Throws RangeError on a reference outside 440–446 Hz or a rate below 16 kHz.
 *
 * @example
 * const harp = buildHarp({ tuning: RICHTER, key: 0, octave: 0 });
 * const ear = createEar({ sampleRate: 48000, harp });
 * // Half a second of hole 4 drawn, D5 (587.33 Hz), as pure as no reed is.
 * ear.push(Float32Array.from({ length: 24000 }, (_, i) => 0.1 * Math.sin((2 * Math.PI * 587.33 * i) / 48000)));
 * ear.end().map(({ sound }) => tab(sound, 'signs')) // ['-4']
 */
export const createEar = (options: EarOptions): Ear => {
  const { sampleRate, harp, reference } = options;
  const rate = sampleRate / decimation(sampleRate);
  const listener = createNoteListener({ ...options, rate });
  const grips = createGripListener({ gate: DEFAULT_GATE, ...options, rate, hop: HOP });
  const joined = createGripNotes(reference);
  let notes: HeardNote[] = [];
  const tracker = createPitchTracker({
    ...options,
    ranges: reachableRanges(harp, reference),
    onHop: (hop) => {
      grips.hop(hop);
      notes.push(...joined.take(listener.hop(hop), []));
    },
    onReading: (reading) => notes.push(...joined.take(listener.frame(reading), grips.frame(reading))),
  });

  return {
    push(samples, sent) {
      notes = [];
      const frames = tracker.push(samples, sent);
      return { frames, notes };
    },
    end: () => joined.take(listener.end(), grips.end()),
    learn: (samples, sent) => tracker.learn(samples, sent),
    delay: () => tracker.delay(),
    teach: (sound, from, to) => grips.teach(sound, from, to),
  };
};
