import type { Bar, Meter } from '../chart/chart';
import { asTicks } from '../theory/units';
import { headerAgain, type Problem, pickUpLength } from './chart-problems';
import { type BarContext, beatsOf, readBar } from './read-bar';
import { type Item, wordsOf } from './scan-chart';

/** The pick-up of a text, if any, and what was wrong with it. */
export interface PickUpReading {
  readonly pickUp: Bar | null;
  readonly problems: readonly Problem[];
}

/**
 * Reads the line `Pick-up:`: chords and `/` a beat each, fewer than a bar has. Of several such lines the first holds.
 * Never throws.
 */
export const readPickUp = (
  items: readonly Item[],
  context: Omit<BarContext, 'at' | 'before'>,
): PickUpReading => {
  const [first, ...again] = items.flatMap((item) =>
    item.kind === 'header' && item.name === 'pick-up' ? [item] : [],
  );
  if (first === undefined) return { pickUp: null, problems: [] };
  const { value, span } = first;
  const words = wordsOf(value.text, value);
  const beats = beatsOf(words);
  const said = again.map(({ span: other }) => headerAgain(other));
  if (beats < 1 || beats >= context.meter.beats)
    return { pickUp: null, problems: [pickUpLength(span, context.meter.beats - 1), ...said] };
  const meter: Meter = { ...context.meter, beats };
  const bar = { text: value.text, line: value.line, column: value.column, words, isLine: false };
  const { spans, problems } = readBar(bar, { ...context, meter, before: null, at: asTicks(0) });
  const length = asTicks(beats * meter.beatTicks);
  return { pickUp: { at: asTicks(0), length, chords: spans }, problems: [...problems, ...said] };
};
