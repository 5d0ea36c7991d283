import type { SoundKey } from './sound-key';

/** Asks the bank's worker for a sound. */
export interface SoundRequest {
  readonly key: SoundKey;
  readonly sampleRate: number;
  /** Seconds it is held at most: what only sounds after that and its release may be left out. All of it when absent. */
  readonly held?: number;
}

/** Part of a sound, in samples from its beginning. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The worker's answer; its samples are handed over, not copied. */
export type SoundAnswer =
  | {
      readonly kind: 'sound';
      readonly key: SoundKey;
      readonly samples: Float32Array<ArrayBuffer>;
      readonly loop: Stretch | null;
      readonly release: number;
    }
  | { readonly kind: 'failed'; readonly key: SoundKey; readonly reason: string };
