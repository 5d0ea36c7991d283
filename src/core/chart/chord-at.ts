import type { ChordSpan } from './chart';

/** The chord that sounds at a place, of chords one after another; none before the first. */
export const chordAt = (spans: readonly ChordSpan[], at: number): ChordSpan | undefined =>
  spans.findLast((span) => span.at <= at);
