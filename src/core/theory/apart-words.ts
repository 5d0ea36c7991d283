/**
 * How far something lies beside something else in time: `19 ms before`, where 0 counts as later.
 * @param seconds below 0 where it is earlier.
 * @param step in so many milliseconds.
 */
export const apartWords = (
  seconds: number,
  { earlier, later }: { readonly earlier: string; readonly later: string },
  step = 1,
): string => {
  const ms = Math.round((1000 * seconds) / step) * step;
  return `${Math.abs(ms)} ms ${ms < 0 ? earlier : later}`;
};
