import type { FinisherOptions, RenderedPiece } from './finisher';

/** Asks the finishing worker for something; it answers each but the first in turn. */
export type FinishOrder =
  | { readonly kind: 'open'; readonly options: FinisherOptions }
  | { readonly kind: 'piece'; readonly piece: RenderedPiece }
  | { readonly kind: 'rest' };

/** The finished samples; handed over, not copied. */
export interface Finished {
  readonly left: Float32Array;
  readonly right: Float32Array;
}
