/**
 * How many entries of a row, from its beginning, something holds for that holds for none after the first it fails for:
 * found by halving, so that a long row costs little more than a short one.
 *
 * @example
 * const starts = [0, 480, 960];
 * countWhile(starts.length, (i) => (starts[i] ?? 0) <= 500) // 2
 */
export const countWhile = (length: number, holds: (index: number) => boolean): number => {
  let low = 0;
  let high = length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(middle)) low = middle + 1;
    else high = middle;
  }
  return low;
};
