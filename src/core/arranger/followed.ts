import type { Chart } from '../chart/chart';
import type { Chord } from '../theory/chord';

/** A chord that somebody else plays, from a bar on until the next one. */
export interface FollowedChord {
  /** From 0. */
  readonly chorus: number;
  /** Index of the bar in the whole chorus. */
  readonly bar: number;
  /** Null where the chart's own chords come back. */
  readonly chord: Chord | null;
}

const isBefore = (one: FollowedChord, chorus: number, bar: number): boolean =>
  one.chorus < chorus || (one.chorus === chorus && one.bar <= bar);

/** The chart of a chorus with the chords that are followed in place of its own. */
export const withFollowed = (
  chart: Chart,
  followed: readonly FollowedChord[] | undefined,
  chorus: number,
): Chart => {
  if (followed === undefined || followed.length === 0) return chart;
  return {
    ...chart,
    bars: chart.bars.map((bar, i) => {
      const chord = followed.findLast((each) => isBefore(each, chorus, i))?.chord ?? null;
      return chord === null ? bar : { ...bar, chords: [{ chord, at: bar.at, length: bar.length }] };
    }),
  };
};
