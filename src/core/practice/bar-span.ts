import type { BarRange } from '../chart/chart';

/** The stretch around a bar over which the same holds as in it. */
export const spanAround = <Value>(values: readonly Value[], bar: number): BarRange => {
  let from = bar;
  let to = bar;
  while (from > 0 && values[from - 1] === values[bar]) from -= 1;
  while (to + 1 < values.length && values[to + 1] === values[bar]) to += 1;
  return { from, to };
};
