import type { Sound } from '../core/harp/harp';
import type { HeardNote } from '../core/hearing/heard-note';
import type { RoundTrip } from '../core/hearing/round-trip';
import type { Seconds } from '../core/theory/units';
import type { EarChoice, HeardReport, LearntReeds, SoundBlock } from './microphone';

/** From the page to the worker. */
export type EarRequest =
  /** Where blocks come from, and how fast: samples a second. */
  | { readonly kind: 'source'; readonly port: MessagePort; readonly sampleRate: number }
  | { readonly kind: 'choice'; readonly choice: EarChoice }
  /** Finds what is sent in the next seconds in what is heard. */
  | { readonly kind: 'measure'; readonly seconds: number }
  /** The note between these seconds of the audio clock was this sound, alone. */
  | { readonly kind: 'teach'; readonly sound: Sound; readonly from: Seconds; readonly to: Seconds }
  /** Whether the sound itself is handed on as well. */
  | { readonly kind: 'record'; readonly on: boolean }
  /** A whole recording, mono, in place of a stream. */
  | {
      readonly kind: 'recording';
      readonly samples: Float32Array;
      /** The band as it was sent out meanwhile. */
      readonly sent?: Float32Array;
      readonly sampleRate: number;
      readonly choice: EarChoice;
    };

/** From the worklet to the worker: the same moment of both, mono. */
export interface EarBlock {
  /** Frame of the audio clock at the first sample. */
  readonly at: number;
  readonly heard: Float32Array;
  readonly sent: Float32Array;
}

/** From the worker to the page. */
export type EarAnswer =
  | { readonly kind: 'heard'; readonly report: HeardReport }
  | { readonly kind: 'measured'; readonly roundTrip: RoundTrip | null }
  | { readonly kind: 'sound'; readonly block: SoundBlock }
  | { readonly kind: 'learnt'; readonly learnt: LearntReeds }
  /** How much of a recording has been heard, 0 to 1, and the notes that have ended since the last answer. */
  | { readonly kind: 'recording'; readonly share: number; readonly notes: readonly HeardNote[] };
