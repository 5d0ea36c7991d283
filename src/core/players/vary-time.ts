import type { DrumLane } from '../score/drum-kit';
import { ticksOf } from '../score/steps';
import { pick, type Random } from '../theory/random';
import type { BarShape, Passage } from './passage';

/** One stroke of a bar, in ticks from the bar's start. */
export interface Stroke {
  readonly at: number;
  readonly lane: DrumLane;
  readonly mark: string;
}

/** A drummer's bars of time are alike this often at most; where a phrase ends, sooner (common practice, no source). */
const MOST_ALIKE = 5;
const MOST_BEFORE_END = 2;

const printOf = (bar: readonly Stroke[]): string =>
  bar
    .map(({ at, lane }) => `${Math.round(at)} ${lane}`)
    .sort()
    .join();

const strikes = (bar: readonly Stroke[], lanes: readonly DrumLane[], at: number): boolean =>
  bar.some((stroke) => lanes.includes(stroke.lane) && Math.abs(stroke.at - at) < 1);

/** Small things a hand or a foot does otherwise on an off-beat: a ghost, a light kick, the hat opened. */
const variationsOf = (bar: readonly Stroke[], at: number): readonly (readonly Stroke[])[] => {
  const hand: DrumLane = bar.some(({ lane }) => lane === 'stick') ? 'stick' : 'snare';
  const ghost: Stroke = { at, lane: hand, mark: 'g' };
  const kick: Stroke = { at, lane: 'kick', mark: 'o' };
  const opened = bar.map(
    (stroke): Stroke => (strikes([stroke], ['hat'], at) ? { ...stroke, lane: 'open' } : stroke),
  );
  return [
    ...(strikes(bar, ['snare', 'stick', 'slap'], at) ? [] : [[...bar, ghost]]),
    ...(strikes(bar, ['kick'], at) ? [] : [[...bar, kick]]),
    ...(strikes(bar, ['hat'], at) ? [opened] : []),
  ];
};

/**
 * Varies bars of time that would be the same for too long, most of all where a phrase ends: one small thing on an off-beat
 * of the second half. Bars are to be asked for in order.
 */
export const createVaried = ({ grid }: Passage) => {
  let before = '';
  let alike = 0;
  return (random: Random, bar: readonly Stroke[], { phrase, fill }: BarShape): readonly Stroke[] => {
    const own = printOf(bar);
    const most = phrase.ends === 'nothing' ? MOST_ALIKE : MOST_BEFORE_END;
    const places = [grid.beats - 1, Math.max(0, grid.beats - 3)].map((beat) =>
      ticksOf(grid, { beat, step: 1, of: 2, mark: '' }),
    );
    const others = places.flatMap((at) => variationsOf(bar, at));
    const tired = fill === 'none' && own === before && alike >= most && others.length > 0;
    const varied = tired ? pick(random, others) : bar;
    const print = printOf(varied);
    alike = print === before ? alike + 1 : 1;
    before = print;
    return varied;
  };
};
