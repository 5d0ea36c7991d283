/**
 * Which lines of a long form are shown, as the first and the last of them: those around the line being heard, as many
 * ahead as behind where there are, so that they hold no more than `most` chords, or that line alone.
 * @param chords how many each line has. @param now the line being heard.
 */
export const linesInView = (
  chords: readonly number[],
  now: number,
  most: number,
): readonly [first: number, last: number] => {
  let [first, last] = [now, now];
  let shown = chords[now] ?? 0;
  const fits = (line: number): boolean => {
    const count = chords[line];
    return count !== undefined && shown + count <= most;
  };
  for (;;) {
    const ahead = last - now <= now - first;
    const next = [ahead ? last + 1 : first - 1, ahead ? first - 1 : last + 1].find(fits);
    if (next === undefined) return [first, last];
    shown += chords[next] ?? 0;
    [first, last] = [Math.min(first, next), Math.max(last, next)];
  }
};
