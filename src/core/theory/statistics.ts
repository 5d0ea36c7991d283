const inOrder = (values: readonly number[]): readonly number[] => values.toSorted((a, b) => a - b);

/** The middle value; the mean of the two middle ones of an even number, 0 of none. */
export const median = (values: readonly number[]): number => {
  const sorted = inOrder(values);
  const middle = sorted.length / 2;
  return sorted.length === 0
    ? 0
    : ((sorted[Math.floor(middle - 0.5)] ?? 0) + (sorted[Math.floor(middle)] ?? 0)) / 2;
};

/** The middle value, of an even number the higher of the two, so that it is always one of them; not a number for none. */
export const highMedian = (values: readonly number[]): number =>
  inOrder(values)[values.length >> 1] ?? Number.NaN;
