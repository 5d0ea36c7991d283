import type { Phrase } from '../phrase/phrase';

/** What came of the turns of a trading so far; it begins anew with each Play. */
export interface TradeRun {
  /** Turns whose call comes once more in the turn after them, in order; a turn may stand here more than once. */
  readonly repeats: readonly number[];
  /** What the harp voice answers, where the player leads: made of what was heard. */
  readonly heard: readonly { readonly turn: number; readonly phrase: Phrase }[];
  /** The chorus that plays, or the first: calls of later ones are made from it on. */
  readonly chorus: number;
}

/** Nothing played yet. */
export const FRESH_RUN: TradeRun = { repeats: [], heard: [], chorus: 0 };
