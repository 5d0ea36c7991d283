import { median } from '../theory/statistics';
import { IN_TEMPO, type Pair, type TimeMap } from './align';
import type { AskedNote, PlayedNote } from './asked-notes';

/** A rate is believed from so many matched notes on, within these bounds. */
const FEWEST = 4;
const RATES = { least: 0.4, most: 2.5 } as const;

/** Times of matched notes: asked, played. */
const timesOf = (
  pairs: readonly Pair[],
  asked: readonly AskedNote[],
  played: readonly PlayedNote[],
): readonly (readonly [number, number])[] =>
  pairs.flatMap((pair) => {
    const want = pair.asked === null ? undefined : asked[pair.asked];
    const note = pair.played === null ? undefined : played[pair.played];
    return want === undefined || note === undefined ? [] : [[want.at, note.at] as const];
  });

/**
 * The player's own time, from matched notes: the median of the slopes between all pairs (Sen, J. Am. Stat. Assoc. 63,
 * 1968; from memory), which a third of stray notes does not move, and the median distance that is left.
 */
export const timeMapOf = (
  pairs: readonly Pair[],
  asked: readonly AskedNote[],
  played: readonly PlayedNote[],
): TimeMap => {
  const times = timesOf(pairs, asked, played);
  const slopes = times.flatMap(([a, b], i) =>
    times.slice(i + 1).flatMap(([c, d]) => (c > a ? [(d - b) / (c - a)] : [])),
  );
  const slope = times.length < FEWEST ? 1 : median(slopes);
  const rate = slope >= RATES.least && slope <= RATES.most ? slope : IN_TEMPO.rate;
  return { rate, offset: median(times.map(([a, b]) => b - rate * a)) };
};
