import type { FinisherOptions } from './finisher';
import type { MixNote, MixSound } from './note-samples';

/** Asks the finishing worker for something; it answers stretches and the rest, each in turn, and says when it is opened. */
export type FinishOrder =
  | { readonly kind: 'open'; readonly options: FinisherOptions }
  /** A sound that notes will name; its samples are handed over. */
  | { readonly kind: 'sound'; readonly id: number; readonly sound: MixSound }
  | { readonly kind: 'forget'; readonly id: number }
  /** The notes that begin within the next frames, in their order. */
  | { readonly kind: 'stretch'; readonly notes: readonly MixNote[]; readonly frames: number }
  | { readonly kind: 'rest' };
